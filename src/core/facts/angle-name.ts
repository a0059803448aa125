// Angles as they are written: a name, or a name and the number of the part that is asked for.
import type { Angle, PartAngle } from "./fact.ts";

/** Every angle that asks for a fact as a whole, and every one that asks for its parts. */
export const WHOLE_ANGLES = [
  "forward",
  "reverse",
  "picture-to-name",
  "name-to-picture",
  "name-to-formula",
  "formula-to-name",
  "spelling",
  "sound-to-name",
  "name-to-sound",
] as const satisfies readonly Angle[];
export const PART_ANGLES = ["gap", "next", "previous", "position", "label"] as const satisfies readonly PartAngle[];

const PATTERN = new RegExp(`^(?:${WHOLE_ANGLES.join("|")}|(?:${PART_ANGLES.join("|")})-[1-9]\\d{0,6})$`);

/** Whether a text names an angle. */
export const isAngle = (text: string): text is Angle => PATTERN.test(text);
