// One photographed page: from the codes that were found in it to a judgement of each of its boxes.
import { type CornerCode, joinCodes, onOnePage, parseCornerCode, type SheetHead } from "../../kit/sheet-code.ts";
import { cornerPlaces, SHEET, type TickBox, tickBoxes } from "../../kit/sheet-layout.ts";
import { fail, ok, type Result } from "../../result.ts";
import { flattenPage } from "./flat-page.ts";
import type { GreyImage } from "./grey-image.ts";
import { fitHomography, type Homography, invert, mapPoint, type Point, type PointPair } from "./homography.ts";
import { type Judgement, judgeBoxes, LIMITS } from "./judge-box.ts";
import { measureBoxes } from "./measure-boxes.ts";

/** A code that a decoder found in a photo. */
export interface FoundCode {
  readonly text: string;
  /** Its corners in dots of the photo, from the code's own top left: top right, bottom right, bottom left follow. */
  readonly corners: readonly [Point, Point, Point, Point];
}

/** Why a photo cannot be read. */
export type PhotoTrouble =
  | { readonly kind: "no-sheet" }
  | { readonly kind: "newer-sheet" }
  | { readonly kind: "several-pages" }
  /** Fewer than three of the four corner codes can be read. */
  | { readonly kind: "few-codes"; readonly found: number }
  /** Codes of one page whose numbers do not agree. */
  | { readonly kind: "damaged" }
  | { readonly kind: "too-small" }
  | { readonly kind: "cut-off" }
  | { readonly kind: "bent" }
  | { readonly kind: "blurred" }
  /** So much noise that a faint mark would be lost in it. */
  | { readonly kind: "grainy" };

/** A box of a page as it was read. */
export interface ReadBox extends TickBox {
  readonly judgement: Judgement;
}

/** A page as it was read. */
export interface PageReading {
  readonly head: SheetHead;
  readonly boxes: readonly ReadBox[];
  /** Takes millimetres of the page to dots of the photo. */
  readonly toPhoto: Homography;
  /** How far the codes' corners lie from where the fit puts them: root mean square, millimetres. */
  readonly residual: number;
}

/** What a photo must hold to be judged. */
export const PHOTO_LIMITS = {
  /** Dots of the photo to a millimetre of paper, where it is smallest. */
  dots: 2.5,
  /** Millimetres by which the codes' corners may lie off, root mean square. */
  residual: 0.9,
  /** Share of boxes whose frame must be found where it should be. */
  frames: 0.9,
  /** Darkness above which a dot is taken for ink, at most. */
  threshold: 0.1,
  /** The same, against the darkness that the thin lines of the frames still have. */
  grain: 0.36,
} as const;

/** Reads the page that a photo shows, from the codes that were found in it. */
export function readPage(photo: GreyImage, found: readonly FoundCode[]): Result<PageReading, PhotoTrouble> {
  const codes = sheetCodes(found);
  if (!codes.ok) return codes;
  const parts = joinCodes(codes.value.map(({ code }) => code));
  const head = codes.value[0]?.code.head;
  if (!parts || !head) return fail({ kind: "damaged" });
  const fitted = fitPage(codes.value, head);
  if (!fitted.ok) return fitted;
  const { toPhoto, residual } = fitted.value;
  const page = flattenPage(photo, toPhoto, head.size);
  const places = tickBoxes(parts, head.size);
  if (places.some((box) => isUnseen(photo, toPhoto, box))) return fail({ kind: "cut-off" });
  const { boxes, threshold } = measureBoxes(page, places);
  const lost = boxes.filter(({ frame }) => frame < LIMITS.frame).length;
  if (lost > (1 - PHOTO_LIMITS.frames) * boxes.length) return fail({ kind: "blurred" });
  const line = middleOf(boxes.map(({ frame }) => frame));
  if (threshold > Math.min(PHOTO_LIMITS.threshold, PHOTO_LIMITS.grain * line)) return fail({ kind: "grainy" });
  const judged = judgeBoxes(boxes);
  const read = places.map((box, i) => ({ ...box, judgement: judged[i] as Judgement }));
  return ok({ head, boxes: doubtLeftOut(read), toPhoto, residual });
}

const middleOf = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;

/** A pile that is said to be left out, of which cards are marked all the same, was not left out for sure. */
export const doubtLeftOut = (boxes: readonly ReadBox[]): readonly ReadBox[] =>
  boxes.map((box) => {
    const contradicted = (other: ReadBox): boolean =>
      other.part === box.part && other.number !== null && other.judgement !== "empty";
    const doubtful = box.number === null && box.judgement === "ticked" && boxes.some(contradicted);
    return doubtful ? { ...box, judgement: "doubtful" } : box;
  });

interface PlacedCode {
  readonly code: CornerCode;
  readonly corners: FoundCode["corners"];
}

function sheetCodes(found: readonly FoundCode[]): Result<readonly PlacedCode[], PhotoTrouble> {
  const parsed = found.map(({ text, corners }) => ({ code: parseCornerCode(text), corners }));
  const codes = parsed.flatMap(({ code, corners }) => (code.ok ? [{ code: code.value, corners }] : []));
  const [first] = codes;
  if (!first)
    return fail({ kind: parsed.some(({ code }) => !code.ok && code.error === "newer") ? "newer-sheet" : "no-sheet" });
  if (codes.some(({ code }) => !onOnePage(code.head, first.code.head))) return fail({ kind: "several-pages" });
  const seen = new Set(codes.map(({ code }) => code.corner));
  if (seen.size !== codes.length) return fail({ kind: "several-pages" });
  return seen.size < 3 ? fail({ kind: "few-codes", found: seen.size }) : ok(codes);
}

function fitPage(
  codes: readonly PlacedCode[],
  { size }: SheetHead,
): Result<{ readonly toPhoto: Homography; readonly residual: number }, PhotoTrouble> {
  const pairs = codes.flatMap(({ code, corners }): readonly PointPair[] => {
    const [x, y] = cornerPlaces(size)[code.corner] as Point;
    const far = SHEET.code;
    const places: readonly Point[] = [
      [x, y],
      [x + far, y],
      [x + far, y + far],
      [x, y + far],
    ];
    return places.map((place, i) => [place, corners[i] as Point]);
  });
  const toPhoto = fitHomography(pairs);
  if (!toPhoto) return fail({ kind: "damaged" });
  const back = invert(toPhoto);
  const squares = pairs.map(([place, dot]) => {
    const [x, y] = mapPoint(back, dot);
    return (x - place[0]) ** 2 + (y - place[1]) ** 2;
  });
  const residual = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
  if (residual > PHOTO_LIMITS.residual) return fail({ kind: "bent" });
  if (leastDots(toPhoto, size) < PHOTO_LIMITS.dots) return fail({ kind: "too-small" });
  return ok({ toPhoto, residual });
}

/** Dots to a millimetre where the page is smallest in the photo: at one of its corners, along one of its edges. */
function leastDots(toPhoto: Homography, { width, height }: { width: number; height: number }): number {
  const corners: readonly Point[] = [
    [0, 0],
    [width, 0],
    [0, height],
    [width, height],
  ];
  const away = (from: Point, to: Point): number => {
    const [a, b] = [mapPoint(toPhoto, from), mapPoint(toPhoto, to)];
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  };
  return Math.min(...corners.flatMap(([x, y]) => [away([x, y], [x + 1, y]), away([x, y], [x, y + 1])]));
}

function isUnseen(photo: GreyImage, toPhoto: Homography, { x, y }: TickBox): boolean {
  const margin = 2;
  const [from, to] = [-margin, SHEET.box + margin];
  return [from, to].some((dx) =>
    [from, to].some((dy) => {
      const [u, v] = mapPoint(toPhoto, [x + dx, y + dy]);
      return u < 0 || v < 0 || u > photo.width || v > photo.height;
    }),
  );
}
