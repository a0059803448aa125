// Numbers of a list's items: each item keeps its number, so that changing a list keeps the history of its cards.
import type { ListContent } from "./fact.ts";

/** Numbers for a new list's items: 1, 2, 3 … */
export const freshNumbers = (items: readonly string[]): readonly number[] => items.map((_, i) => i + 1);

/**
 * Numbers for a list that was changed. An item that keeps its text keeps its number, wherever it moved. One that is
 * new takes over the number of one that is gone if it stands where that stood: behind or before the same item. Any
 * other gets a number never used by this fact (`used`).
 */
export function renumberItems(
  before: Pick<ListContent, "items" | "numbers">,
  items: readonly string[],
  used: readonly number[],
): readonly number[] {
  const left = new Map(before.items.map((text, i) => [before.numbers[i] ?? i + 1, { text, at: i }]));
  const numbers: (number | undefined)[] = items.map((text) => {
    const same = [...left].find(([, item]) => item.text === text)?.[0];
    if (same !== undefined) left.delete(same);
    return same;
  });
  const takeOver = (i: number, step: -1 | 1): void => {
    const beside = i + step < 0 || i + step >= items.length ? null : numbers[i + step];
    if (numbers[i] !== undefined || beside === undefined) return;
    const place = [...left].find(([, { at }]) => (before.numbers[at + step] ?? null) === beside)?.[0];
    if (place === undefined) return;
    numbers[i] = place;
    left.delete(place);
  };
  for (let i = 0; i < items.length; i++) takeOver(i, -1);
  for (let i = items.length - 1; i >= 0; i--) takeOver(i, 1);
  let next = Math.max(0, ...before.numbers, ...used) + 1;
  return numbers.map((number) => number ?? next++);
}
