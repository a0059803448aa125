// What is in the boxes of a flat page: ink against the noise of the paper, stroke by stroke.
import { SHEET, type TickBox } from "../../kit/sheet-layout.ts";
import { type Frame, findFrame } from "./find-frame.ts";
import { type FlatPage, STEPS, smoothGrid } from "./flat-page.ts";
import { labelStrokes, type StrokeMap } from "./ink-strokes.ts";
import type { BoxInk } from "./judge-box.ts";

/** The boxes of a page as they were measured. */
export interface PageInk {
  readonly boxes: readonly BoxInk[];
  /** Darkness, 0 … 1, above which a dot was taken for ink. The noisier the photo, the higher. */
  readonly threshold: number;
}

/** Dots darker than this part of the threshold are nearly ink: 2.5 spreads of the paper, which few of its dots are. */
const NEARLY = 0.55;

type Place = Pick<TickBox, "x" | "y">;

/** Steps from a box's outer edge to what counts as inside: past its frame and a little blur, 0.8 mm. */
const INSET = 4;
const SIDE = SHEET.box * STEPS;
const LONG = SIDE - 2 * INSET;

/** Steps on either side of a frame's outer edge that are taken for print: 0.4 mm outside, 0.6 mm inside. */
const PRINT = { outside: 2, inside: 3 } as const;

/** Darkness of ink at the least, even on the quietest photo. */
const LEAST_INK = 0.05;

/** Dots are ink if they are darker than the paper by this many times its spread. */
const SPREADS = 4.5;

/** A threshold above this asks for more smoothing, which costs thin strokes some of their darkness. */
const GRAINY = 0.08;

/** Measures the boxes whose corners should be at these places, millimetres. */
export function measureBoxes(flat: FlatPage, places: readonly Place[]): PageInk {
  const frames = places.map(({ x, y }) => findFrame(flat, x, y));
  const { dark, threshold } = clearPaper(flat, frames);
  const page = { ...flat, dark };
  const strokes = labelStrokes(page, threshold);
  const totals = inkOfStrokes(page, strokes, frames);
  const boxes = frames.map((frame) => measureBox(page, strokes, totals, frame, threshold));
  return { boxes: aboveNeighbours(boxes, places), threshold };
}

/** Millimetres within which boxes are neighbours: some lines up and down, and the next columns. */
const NEAR = 33;

/** The share of neighbours that are taken to be paler than a box without any mark. */
const PALER = 0.3;

/** Bare paper never has more that is nearly ink; more among the neighbours is marks. */
const MOST_PALE = 0.005;

/** Takes from each box the darkness that bare paper has round it, where shadows are noisier than light. */
function aboveNeighbours(boxes: readonly BoxInk[], places: readonly Place[]): readonly BoxInk[] {
  return boxes.map((box, i) => {
    const { x, y } = places[i] as Place;
    const near = boxes.filter((_, k) => {
      const other = places[k] as Place;
      return k !== i && Math.hypot(other.x - x, other.y - y) <= NEAR;
    });
    const pale = near.map((one) => one.pale).sort((a, b) => a - b);
    return { ...box, pale: box.pale - Math.min(MOST_PALE, pale[Math.floor(pale.length * PALER)] ?? 0) };
  });
}

/** Darkness above the bare paper, made smoother once more if the photo is grainy, and what counts as ink in it. */
function clearPaper(flat: FlatPage, frames: readonly Frame[]): { dark: Float32Array; threshold: number } {
  const measure = (dark: Float32Array) => {
    const paper = paperDarkness({ ...flat, dark }, frames);
    // The white of the paper was taken where noise is lightest, so that bare paper looks a little dark.
    const clear = dark.map((one) => Math.max(0, one - paper.level));
    return { dark: clear, threshold: Math.max(LEAST_INK, SPREADS * paper.spread) };
  };
  const once = measure(flat.dark);
  return once.threshold > GRAINY ? measure(smoothGrid(flat.dark, flat.width, flat.height)) : once;
}

/** Darkness of the bare paper in the boxes: its median and its spread. Most of the inside of boxes is paper. */
function paperDarkness({ width, dark }: FlatPage, frames: readonly Frame[]): { level: number; spread: number } {
  const dots: number[] = [];
  for (const { left, top } of frames)
    for (let j = INSET; j < SIDE - INSET; j += 2)
      for (let i = INSET; i < SIDE - INSET; i += 2) dots.push(dark[(top + j) * width + left + i] as number);
  const level = median(dots);
  // Of a normal distribution half lies within 0.6745 spreads of the middle.
  return { level, spread: median(dots.map((dot) => Math.abs(dot - level))) / 0.6745 };
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;

/** The darkness that each stroke holds altogether, printed frames left out. */
function inkOfStrokes({ width, dark }: FlatPage, strokes: StrokeMap, frames: readonly Frame[]): Float32Array {
  const print = new Uint8Array(dark.length);
  for (const { left, top } of frames)
    for (let j = -PRINT.outside; j < SIDE + PRINT.outside; j++)
      for (let i = -PRINT.outside; i < SIDE + PRINT.outside; i++) {
        const deep = Math.min(i, j, SIDE - 1 - i, SIDE - 1 - j);
        if (deep < PRINT.inside) print[(top + j) * width + left + i] = 1;
      }
  const totals = new Float32Array(strokes.reduce((most, one) => Math.max(most, one), 0) + 1);
  for (let at = 0; at < dark.length; at++)
    if (strokes[at] !== 0 && print[at] === 0)
      totals[strokes[at] as number] = (totals[strokes[at] as number] as number) + (dark[at] as number);
  return totals;
}

function measureBox(page: FlatPage, strokes: StrokeMap, totals: Float32Array, frame: Frame, threshold: number): BoxInk {
  const byStroke = new Map<number, number>();
  const quarter = Math.round(LONG / 4);
  let [middle, white, pale] = [0, 0, 0];
  let [darkest, brightest] = [255, 1];
  for (let j = 0; j < LONG; j++)
    for (let i = 0; i < LONG; i++) {
      const at = (frame.top + INSET + j) * page.width + frame.left + INSET + i;
      const paper = page.white[at] as number;
      white += paper;
      darkest = Math.min(darkest, paper);
      brightest = Math.max(brightest, paper);
      const dark = page.dark[at] as number;
      if (dark < threshold) {
        if (dark > NEARLY * threshold) pale += dark;
        continue;
      }
      const stroke = strokes[at] as number;
      byStroke.set(stroke, (byStroke.get(stroke) ?? 0) + dark);
      if (Math.min(i, j) >= quarter && Math.max(i, j) < LONG - quarter) middle += dark;
    }
  const area = LONG ** 2;
  return {
    frame: frame.palest,
    strokes: [...byStroke].map(([stroke, dark]) => ({
      stroke,
      ink: dark / area,
      share: dark / (totals[stroke] as number),
    })),
    pale: pale / area,
    steady: darkest / brightest,
    middle: middle / (LONG - 2 * quarter) ** 2,
    even: Math.min(1, white / area / whiteBeside(page, frame)),
  };
}

/** The darkest paper 2 mm outside the corners and sides of a box: a shadow on the box lies on some of them too. */
function whiteBeside({ width, height, white }: FlatPage, { left, top }: Frame): number {
  const away = 2 * STEPS;
  const half = SIDE >> 1;
  let least = 255;
  for (const v of [-away, half, SIDE + away])
    for (const u of [-away, half, SIDE + away]) {
      if (u === half && v === half) continue;
      const [x, y] = [Math.min(Math.max(left + u, 0), width - 1), Math.min(Math.max(top + v, 0), height - 1)];
      least = Math.min(least, white[y * width + x] as number);
    }
  return Math.max(1, least);
}
