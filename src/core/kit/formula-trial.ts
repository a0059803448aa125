// Sizes of a text with drawn formulae that are worth trying. Their widths and heights are known exactly, so many sizes
// are out at once; the engine tries the rest.
import { overhangOf } from "./formulae.ts";
import { heightOf, leadingOf, POINTS, type SizeTrial, sizesOf } from "./line-heights.ts";
import type { FormulaBox, TextItem } from "./page.ts";

/** The engine reckons a millimetre as 2.83465 points: what differs by less is left for it to decide. */
const ROUNDING = 1 + 1e-5;

/** The least that letters of any script may come to, of their width in ems and of the height of capitals. */
const LEAST = { width: 0.45, height: 0.6 } as const;

/** Sizes at which no formula is larger than the box and the lines might fit. */
export function formulaTrial(item: TextItem, widthOf: (text: string) => number): SizeTrial {
  const [width, height] = [item.width * POINTS * ROUNDING, item.height * POINTS * ROUNDING];
  const boxes = item.runs.flatMap((run) => run.box ?? []);
  const widest = Math.max(0, ...boxes.map((box) => box.width));
  const heights = item.runs.flatMap((run) => (run.box ? [leastHeight(run.box, overhangOf(run))] : []));
  const tallest = Math.max(0, ...heights);
  const lowest = Math.min(LEAST.height, ...heights);
  const leading = leadingOf(item.language);
  const lines = leastWidths(item, widthOf).filter((line) => line > 0);
  const whole = sizesOf(item).filter((size) => {
    const counts = lines.map((line) => Math.ceil((line * size) / width));
    const high = Math.max(tallest, heightOf(counts, lowest, leading));
    return widest * size <= width && high * size <= height;
  });
  return { whole, sure: null, hyphenated: whole, wordFits: 0 };
}

/** What a line makes room for at the least. */
const leastHeight = ({ ascent, depth }: FormulaBox, overhang: number): number =>
  Math.max(0, ascent - overhang) + Math.max(0, depth - overhang);

/** The least width in ems of every hard line; spaces vanish where a line is broken. */
function leastWidths({ runs }: TextItem, widthOf: (text: string) => number): readonly number[] {
  const widths = [0];
  const add = (width: number): void => {
    widths[widths.length - 1] = (widths.at(-1) ?? 0) + width;
  };
  for (const { text, box } of runs) {
    if (box) add(box.width);
    else
      for (const [i, line] of text.split("\n").entries()) {
        if (i > 0) widths.push(0);
        add(widthOf(line.replace(/\s/gu, "")) * LEAST.width);
      }
  }
  return widths;
}
