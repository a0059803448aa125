// Which sizes of a text are worth trying. Setting a text to see whether it fits is the dearest part of a page, and
// widths of characters tell most of the answer: a size is left to the engine only where they do not tell enough.
import { formulaTrial } from "./formula-trial.ts";
import { heightOf, leadingOf, POINTS, type SizeTrial, sizesOf } from "./line-heights.ts";
import type { TextItem, TextRun } from "./page.ts";
import type { Size } from "./paper.ts";

/** Width of a text in one line, in ems, added up from its characters. */
export type WidthOf = (text: string, strong: boolean) => number;

/** By how much widths are multiplied for the least and the most, and how high capitals are, in ems. */
type Slack = Readonly<Record<"narrow" | "wide" | "low" | "high", number>>;

/** What real lines may differ by: kerning and ligatures change little, joined and stacked letters much. */
const PLAIN: Slack = { narrow: 0.96, wide: 1.04, low: 0.71, high: 0.734 };
const SHAPED: Slack = { narrow: 0.45, wide: 1.35, low: 0.6, high: 0.76 };

/** What a line of Chinese or Japanese may leave empty so that no mark begins the next, in ems. */
const RAGGED = 3;

/** The sizes of a text that widths alone cannot rule out, and one at which it is certain to fit. */
export function sizeTrial(item: TextItem, widthOf: WidthOf): SizeTrial {
  if (item.runs.some((run) => run.box)) return formulaTrial(item, (text) => widthOf(text, false));
  const [width, height] = [item.width * POINTS, item.height * POINTS];
  if (isShort(item, widthOf, { width: width / item.most, height: height / item.most }))
    return { whole: [], sure: item.most, hyphenated: [], wordFits: item.most };
  const text = measured(item, widthOf);
  const word = widthOf(item.longest, isStrong(item.runs));
  const wordFits = Math.min(width / (word * text.slack.wide), item.most);
  const surely = (size: number): boolean => mostHeight(text, width / size) * size <= height;
  if (surely(item.most)) return { whole: [], sure: item.most, hyphenated: [], wordFits };
  const sizes = sizesOf(item);
  const parts = text.breaks === "unknown" ? [] : text.parts();
  const sure = sizes.find(surely) ?? null;
  const whole = sizes.filter(
    (size) =>
      size > (sure ?? 0) &&
      word * text.slack.narrow * size <= width &&
      heightOf(fewestLines(parts, text, width / size), text.slack.low, text.leading) * size <= height,
  );
  const dense = sizes.filter(
    (size) => heightOf(densest(parts, text.slack, width / size), text.slack.low, text.leading) * size <= height,
  );
  return { whole, sure, hyphenated: sure === null ? dense : [], wordFits };
}

/** Most texts of a page fit on one line whatever the script; that is soon found out. Sizes in ems. */
function isShort({ runs }: TextItem, widthOf: WidthOf, { width, height }: Size): boolean {
  if (SHAPED.high > height || runs.some(({ look, text }) => look === "formula" || text.includes("\n"))) return false;
  return runs.reduce((sum, run) => sum + widthOf(run.text, isStrong(runs)), 0) * SHAPED.wide <= width;
}

const isStrong = (runs: readonly TextRun[]): boolean => runs.some(({ look }) => look === "strong" || look === "answer");

/** A stretch of a line that is not broken. */
interface Part {
  readonly width: number;
  readonly blank: boolean;
}

/** The hard lines of a text as widths in ems. */
interface MeasuredText {
  /** Pieces between which a line may break for certain. */
  readonly pieces: readonly (readonly number[])[];
  /** Parted wherever a line might break; lines of nothing left out. Dear, so only asked for once. */
  readonly parts: () => Lines;
  readonly space: number;
  readonly slack: Slack;
  /** Space between two lines, in ems. */
  readonly leading: number;
  readonly breaks: "between words" | "anywhere" | "unknown";
}

const isInk = ({ width, blank }: Part): boolean => width > 0 && !blank;

const NOT_PLAIN = /[^\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]/u;
const ANYWHERE = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}]/u;
/** Thai and its neighbours break between words that only a dictionary knows. */
const BY_DICTIONARY = /[\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}]/u;

function measured({ runs, language }: TextItem, widthOf: WidthOf): MeasuredText {
  const lines = runs
    .map((run) => run.text)
    .join("")
    .split("\n");
  const all = lines.join("");
  const strong = isStrong(runs);
  const unknown = BY_DICTIONARY.test(all) || runs.some((run) => run.look === "formula");
  const part = (text: string): Part => ({ width: widthOf(text, strong), blank: text === " " });
  return {
    pieces: lines.map((line) => piecesOf(line).map((piece) => widthOf(piece, strong))),
    parts: () => lines.map((line) => partsOf(line).map(part)).filter((line) => line.some(isInk)),
    space: widthOf(" ", strong),
    leading: leadingOf(language),
    slack: NOT_PLAIN.test(all) ? SHAPED : PLAIN,
    breaks: unknown ? "unknown" : ANYWHERE.test(all) ? "anywhere" : "between words",
  };
}

/** Divided at spaces where no rule of line breaking (Unicode Standard Annex 14, LB13 to LB17) forbids a break. */
const piecesOf = (line: string): readonly string[] =>
  line.split(/(?<=[^\p{Ps}\p{Pi}\p{Pf}\p{Pd}"' ]) +(?=[\p{L}\p{N}\p{S}\p{Ps}])/u);

/** Divided round everything that is neither letter nor figure. */
const partsOf = (line: string): readonly string[] => line.split(/([^\p{L}\p{M}\p{N}])/u).filter((part) => part !== "");

/** Lines that each hard line takes at the most, in a width in ems; infinite where a piece is too wide or nothing is known. */
function mostLines({ pieces, space, slack, breaks }: MeasuredText, width: number): readonly number[] {
  return pieces.map((line) => {
    const wide = line.map((piece) => piece * slack.wide);
    if (breaks === "between words") return filledLines(wide, space, width);
    const total = wide.reduce((sum, piece) => sum + piece + space, 0);
    if (total <= width) return 1;
    return breaks === "anywhere" && width > 2 * RAGGED ? Math.ceil(total / (width - RAGGED)) : Infinity;
  });
}

const mostHeight = (text: MeasuredText, width: number): number =>
  heightOf(mostLines(text, width), text.slack.high, text.leading);

function filledLines(pieces: readonly number[], space: number, width: number): number {
  let [count, used] = [1, 0];
  for (const piece of pieces) {
    if (piece > width) return Infinity;
    const after = used === 0 ? piece : used + space + piece;
    if (after > width) [count, used] = [count + 1, piece];
    else used = after;
  }
  return count;
}

type Lines = readonly (readonly Part[])[];

/** Lines that each hard line takes at the least, if no word is divided. */
function fewestLines(lines: Lines, { breaks, slack }: MeasuredText, width: number): readonly number[] {
  if (breaks !== "between words" || slack !== PLAIN) return densest(lines, slack, width);
  return lines.map((line) => {
    let [count, used, blank] = [1, 0, 0];
    for (const part of line) {
      const wide = Math.min(width, part.width * slack.narrow);
      if (part.blank) blank += wide;
      else {
        const after = used + blank + wide;
        [count, used, blank] = after > width && used > 0 ? [count + 1, wide, 0] : [count, after, 0];
      }
    }
    return count;
  });
}

/** The same if lines could be filled to the last hair. */
const densest = (lines: Lines, { narrow }: Slack, width: number): readonly number[] =>
  lines.map((line) => Math.ceil((line.reduce((sum, part) => sum + part.width, 0) * narrow) / width));
