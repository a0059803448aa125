// One fact out of several that say the same.
import { possibleAngles } from "../cards/cards.ts";
import type { Fact } from "./fact.ts";

const PROSE = ["note", "source", "story", "why"] as const;

/**
 * The first fact with what the others have beside it: their tags, a picture where it has none, and every note, story
 * and source that differs, below its own. Its wording stays, and it is asked from every angle that any of them chose.
 */
export function mergeFacts<T extends Fact>(kept: T, others: readonly Fact[]): T {
  const all: readonly Fact[] = [kept, ...others];
  const prose = Object.fromEntries(PROSE.map((field) => [field, joined(all.map((fact) => fact[field]))]));
  const wanted = new Set(all.flatMap((fact) => fact.angles));
  // A picture comes with its description and where it is from.
  const { picture, pictureAlt, pictureSource, pictureLicence } = all.find((fact) => fact.picture !== null) ?? kept;
  const sound = all.find((fact) => fact.sound !== null)?.sound ?? null;
  return {
    ...kept,
    ...prose,
    picture,
    pictureAlt,
    pictureSource,
    pictureLicence,
    sound,
    tags: [...new Set(all.flatMap((fact) => fact.tags))],
    angles: possibleAngles(kept).filter((angle) => wanted.has(angle)),
  };
}

const joined = (texts: readonly string[]): string =>
  [...new Set(texts.map((text) => text.trim()).filter((text) => text !== ""))].join("\n");
