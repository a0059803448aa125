// Numbers of a picture's labels. A label carries its number with it, so only new ones have to be given one.
import type { PictureLabel } from "./fact.ts";

/**
 * Labels with numbers that are theirs alone: one whose number is among `before` is that label, however it was
 * changed; any other is new and gets a number never used by this fact (`used`).
 */
export function renumberLabels(
  before: readonly number[],
  labels: readonly PictureLabel[],
  used: readonly number[],
): readonly PictureLabel[] {
  const left = new Set(before);
  let next = Math.max(0, ...before, ...used) + 1;
  return labels.map((label) => (left.delete(label.number) ? label : { ...label, number: next++ }));
}
