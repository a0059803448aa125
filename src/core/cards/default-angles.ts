// From which angles a fact is asked while nobody has chosen otherwise.
import type { Angle, Fact, FactContent } from "../facts/fact.ts";
import { possibleAngles } from "./cards.ts";

/** An angle without the number of the part that it asks for. */
export type AngleFamily = Angle extends infer A ? (A extends `${infer F}-${number}` ? F : A) : never;

/** The angles of a new fact, by its kind. A list is asked from item to item: the other ways are work for few uses. */
export const FIRST_ANGLES: Readonly<Record<FactContent["kind"], readonly AngleFamily[]>> = {
  pair: ["forward", "reverse"],
  statement: ["gap"],
  picture: ["picture-to-name", "name-to-picture"],
  list: ["next"],
  formula: ["name-to-formula", "formula-to-name"],
  spelling: ["spelling"],
  sound: ["sound-to-name"],
  labelled: ["label"],
};

/** An angle without its number. */
export const angleFamily = (angle: Angle): AngleFamily => angle.replace(/-\d+$/, "") as AngleFamily;

/** The angles of a new fact. */
export const defaultAngles = (content: FactContent): readonly Angle[] =>
  possibleAngles(content).filter((angle) => FIRST_ANGLES[content.kind].includes(angleFamily(angle)));

/**
 * The angles of a fact that was reworded: what was asked goes on, what was given up stays so, and a new part is asked
 * in the ways in which the others are. A fact of another kind than before is asked as a new one.
 */
export function anglesAfter(before: Fact, content: FactContent): readonly Angle[] {
  if (before.kind !== content.kind) return defaultAngles(content);
  const known = new Set(possibleAngles(before));
  const families = new Set(before.angles.map(angleFamily));
  return possibleAngles(content).filter((angle) =>
    known.has(angle) ? before.angles.includes(angle) : families.has(angleFamily(angle)),
  );
}
