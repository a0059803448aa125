// Strokes of ink on a flat page: dark dots that touch, so that a tick and its tail in the next box are one.
import type { FlatPage } from "./flat-page.ts";

/** For each dot of a page the stroke that it belongs to; 0 for none. */
export type StrokeMap = Int32Array;

/** Numbers the strokes: dots darker than `least` that touch one another by a side or a corner. Frames count as strokes. */
export function labelStrokes({ width, dark }: FlatPage, least: number): StrokeMap {
  const labels = new Int32Array(dark.length);
  // Each label points to a smaller one that it was found to be joined with, or to itself.
  const parents: number[] = [0];
  const rootOf = (label: number): number => {
    let root = label;
    while (parents[root] !== root) root = parents[root] as number;
    parents[label] = root;
    return root;
  };
  for (let at = 0; at < dark.length; at++) {
    if ((dark[at] as number) < least) continue;
    const x = at % width;
    const [behind, ahead] = [x > 0 ? 1 : 0, x + 1 < width ? 1 : 0];
    let own = 0;
    for (const before of [at - behind, at - width - behind, at - width, at - width + ahead]) {
      const label = before < 0 || before === at ? 0 : (labels[before] as number);
      if (label === 0) continue;
      const root = rootOf(label);
      if (own !== 0 && own !== root) parents[Math.max(own, root)] = Math.min(own, root);
      own = own === 0 ? root : Math.min(own, root);
    }
    labels[at] = own === 0 ? parents.push(parents.length) - 1 : own;
  }
  return labels.map(rootOf);
}
