// Made photos of marked sheets, each wholly determined by its seed.
import type { TickBox } from "../../../src/core/kit/sheet-layout.ts";
import { aimCamera, type Shot, type ShotRange } from "./camera.ts";
import { dice } from "./dice.ts";
import { type Habit, type MarkKind, MEANT, markBoxes, UNMEANT } from "./mark-boxes.ts";
import { DOTS_PER_MM, type PrintedPage } from "./printed-sheet.ts";
import { type Lens, takePhoto } from "./take-photo.ts";

type Range = readonly [low: number, high: number];

/** Under what conditions photos are made; every photo draws its own from these. */
export interface Conditions {
  /** Width and height of the photo in dots. */
  readonly frames: readonly (readonly [width: number, height: number])[];
  readonly shot: Omit<ShotRange, "width" | "height">;
  readonly lens: Readonly<Record<keyof Lens, Range>>;
  readonly marks: Omit<Habit, "usual">;
  /** Kinds of marks of which each person has one as a habit; without them every kind comes as often. */
  readonly habits: readonly (typeof MEANT)[number][];
}

/** What telephones take: 12, 8, 5 and 3 megapixels. */
const FRAMES = [
  [4000, 3000],
  [3264, 2448],
  [2560, 1920],
  [2048, 1536],
] as const;

/** People who mark each in their own way, with an accident now and then, and who take some care with the photo. */
export const EVERYDAY: Conditions = {
  frames: FRAMES,
  shot: { tilt: 35, bend: 1.2, shadow: 0.45, fill: [0.82, 0.97] },
  lens: { blur: [0.03, 0.3], noise: [1, 7], exposure: [170, 250], quality: [50, 92] },
  marks: { meant: 0.12, leftOut: 0.02, unmeant: 0.01 },
  habits: MEANT.filter((kind) => kind !== "shaded"),
};

/** Every kind of mark on one sheet, one accident on twenty boxes, worse light and worse focus, sheets cut off. */
export const HARD: Conditions = {
  frames: FRAMES,
  shot: { tilt: 35, bend: 1.5, shadow: 0.38, fill: [0.8, 1.06] },
  lens: { blur: [0.03, 0.45], noise: [1, 9], exposure: [150, 255], quality: [40, 92] },
  marks: { meant: 0.15, leftOut: 0.15, unmeant: 0.05 },
  habits: [],
};

/** A made photo and the truth about it. */
export interface MadePhoto {
  readonly jpeg: Uint8Array;
  readonly page: PrintedPage["page"];
  /** The mark in each of the page's boxes. */
  readonly marks: readonly MarkKind[];
  readonly shot: Shot;
}

/** The photo of a seed: one of the pages, marked and taken. */
export async function makePhoto(seed: number, pages: readonly PrintedPage[], under: Conditions): Promise<MadePhoto> {
  const chance = dice(seed);
  const { page, drawing } = chance.pick(pages);
  const marked = { ...drawing, dots: Uint8Array.from(drawing.dots) };
  const usual = under.habits.length > 0 ? chance.pick(under.habits) : null;
  const marks = markBoxes(marked, DOTS_PER_MM, page.boxes, { ...under.marks, usual }, chance);
  const [width, height] = chance.pick(under.frames);
  const shot = aimCamera(page.head.size, { ...under.shot, width, height }, chance);
  const { blur, noise, exposure, quality } = under.lens;
  const lens: Lens = {
    blur: chance.between(...blur),
    noise: chance.between(...noise),
    exposure: chance.between(...exposure),
    quality: Math.round(chance.between(...quality)),
  };
  return { jpeg: await takePhoto(marked, DOTS_PER_MM, shot, lens, chance), page, marks, shot };
}

/** Whether a mark says that the card was missed. */
export const isMeant = (mark: MarkKind): boolean => (MEANT as readonly MarkKind[]).includes(mark);

/** Whether a photo shows marks that mean nothing. */
export const hasAccident = ({ marks }: Pick<MadePhoto, "marks">): boolean =>
  marks.some((mark) => (UNMEANT as readonly MarkKind[]).includes(mark));

/** The boxes that were read wrongly although no doubt was raised, with their marks. */
export function wrongBoxes(
  { marks }: Pick<MadePhoto, "marks">,
  read: readonly (TickBox & { readonly judgement: "empty" | "ticked" | "doubtful" })[],
): readonly string[] {
  return read.flatMap(({ number, judgement }, i) => {
    const mark = marks[i] as MarkKind;
    const wrong = judgement !== "doubtful" && isMeant(mark) !== (judgement === "ticked");
    return wrong ? [`${number ?? "left out"}: ${mark} read as ${judgement}`] : [];
  });
}
