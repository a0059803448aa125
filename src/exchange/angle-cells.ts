// The angles of a fact in a cell, such as "forward" or "next; position 2": a part is named by its place in the fact, since
// the numbers under which the box knows it belong to its history.
import { translateAngles, withFreshNumbers } from "../app/number-parts.ts";
import { possibleAngles } from "../core/cards/cards.ts";
import { angleFamily, defaultAngles } from "../core/cards/default-angles.ts";
import type { Angle, FactContent } from "../core/facts/fact.ts";
import { groupBy } from "../core/lists.ts";
import { fail, ok, type Result } from "../core/result.ts";

/** The angles from which a fact is asked, as a cell; empty if they are those that a new fact of its kind gets. */
export function anglesCell(fact: FactContent, angles: readonly Angle[]): string {
  const fresh = withFreshNumbers(fact);
  const chosen = new Set(translateAngles(fact, fresh, angles));
  const usual = defaultAngles(fresh);
  if (chosen.size === usual.length && usual.every((angle) => chosen.has(angle))) return "";
  return [...families(fresh)]
    .flatMap(([family, all]) => {
      const own = all.filter((angle) => chosen.has(angle));
      return own.length === all.length ? [family] : own.map((angle) => angle.replace(/-(\d+)$/, " $1"));
    })
    .join("; ");
}

/** The angles that a cell names for a fact with fresh numbers; null if it is empty. Fails with the reason. */
export function readAngles(cell: string, content: FactContent): Result<readonly Angle[] | null, string> {
  const words = cell.split(/[;,\n]/u).map((word) => word.trim());
  const byFamily = families(content);
  const chosen = new Set<Angle>();
  for (const word of words.filter((one) => one !== "")) {
    const name = word.toLowerCase().replace(/\s+/gu, "-");
    const named = possibleAngles(content).filter((angle) => angle === name || angleFamily(angle) === name);
    if (named.length === 0)
      return fail(`“${word}” is not an angle of this fact: use ${[...byFamily.keys()].join(", ")}, or clear the cell`);
    for (const angle of named) chosen.add(angle);
  }
  return ok(chosen.size === 0 ? null : possibleAngles(content).filter((angle) => chosen.has(angle)));
}

const families = (content: FactContent): ReadonlyMap<string, readonly Angle[]> =>
  groupBy(possibleAngles(content), angleFamily);
