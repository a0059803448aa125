import { beforeAll, describe, expect, it } from "vitest";
import { EVERYDAY, HARD, makePhoto, wrongBoxes } from "../../../../tests/support/paper-photo/made-photo.ts";
import { type PrintedPage, printSheet } from "../../../../tests/support/paper-photo/printed-sheet.ts";
import { decodeJpeg, prepareDecoder, readJpeg } from "../../../../tests/support/paper-photo/read-jpeg.ts";
import { SHEETS, type Size } from "../../kit/paper.ts";
import { cornerCodes, type SheetHead } from "../../kit/sheet-code.ts";
import { cropBox } from "./crop-box.ts";
import type { Point } from "./homography.ts";
import { type FoundCode, readPage } from "./read-page.ts";

/** Mean square distance of the codes' corners from the fit, in millimetres: the decoder finds corners to a dot or so. */
const RESIDUAL = 0.6;

let pages: readonly PrintedPage[];

beforeAll(async () => {
  prepareDecoder();
  const numbers = Array.from({ length: 130 }, (_, i) => 1042 + 37 * i);
  const from = { box: "observatory", date: "2026-11-26", day: 70 };
  pages = await printSheet([{ title: "Compartment 1", numbers }], from, SHEETS.a4 as Size);
});

describe("photos of a printed sheet", () => {
  const frames = [[2560, 1920]] as const;

  // The report in bench/photo-report.ts reads hundreds; these show within seconds that something broke.
  it.each([1, 2, 4, 5])("taken with some care are read without a box that is wrong (%i)", async (seed) => {
    const photo = await makePhoto(seed, pages, { ...EVERYDAY, frames });
    const read = await readJpeg(photo.jpeg);
    if (!read.ok) throw new Error(read.error.kind);
    expect(read.value.head).toMatchObject({ date: "2026-11-26", day: 70, page: photo.page.head.page });
    expect(read.value.residual).toBeLessThan(RESIDUAL);
    expect(wrongBoxes(photo, read.value.boxes)).toEqual([]);
    const ticked = read.value.boxes.filter(({ judgement }) => judgement === "ticked").length;
    const doubtful = read.value.boxes.filter(({ judgement }) => judgement === "doubtful").length;
    expect(ticked).toBeGreaterThan(0);
    expect(doubtful).toBeLessThan(read.value.boxes.length / 10);
  });

  it.each([3, 6, 8])("with every kind of mark raise a doubt rather than an error (%i)", async (seed) => {
    const photo = await makePhoto(seed, pages, { ...HARD, frames });
    const read = await readJpeg(photo.jpeg);
    if (!read.ok) throw new Error(read.error.kind);
    expect(wrongBoxes(photo, read.value.boxes)).toEqual([]);
    expect(read.value.boxes.some(({ judgement }) => judgement === "doubtful")).toBe(true);
  });

  it("that are cut off, too small or too blurred are refused, and it is said which", async () => {
    const refusal = async (under: typeof EVERYDAY): Promise<string> => {
      const read = await readJpeg((await makePhoto(4, pages, under)).jpeg);
      return read.ok ? "read" : read.error.kind;
    };
    const { shot, lens } = EVERYDAY;
    expect(await refusal({ ...EVERYDAY, frames, shot: { ...shot, fill: [1.12, 1.12] } })).toMatch(/few-codes|cut-off/);
    expect(await refusal({ ...EVERYDAY, frames: [[1024, 768]] })).toMatch(/too-small|few-codes/);
    expect(await refusal({ ...EVERYDAY, frames, lens: { ...lens, blur: [0.9, 0.9] } })).toMatch(/no-sheet|few-codes/);
  });

  it("show a doubtful box upright, however the telephone was held", async () => {
    const photo = await makePhoto(8, pages, { ...EVERYDAY, frames });
    const { grey, codes } = await decodeJpeg(photo.jpeg);
    const read = readPage(grey, codes);
    if (!read.ok) throw new Error(read.error.kind);
    const box = read.value.boxes[7] as (typeof read.value.boxes)[number];
    const { width, dots, box: inside } = cropBox(grey, read.value.toPhoto, box);
    const mean = (left: number, top: number, wide: number, high: number): number => {
      let sum = 0;
      for (let j = top; j < top + high; j++)
        for (let i = left; i < left + wide; i++) sum += dots[j * width + i] as number;
      return sum / (wide * high);
    };
    // The frame is darker than the paper beside it on each of the four sides.
    const { left, top, side } = inside;
    const paper = mean(left - 20, top, 10, side);
    for (const [x, y, w, h] of [
      [left - 2, top, 6, side],
      [left + side - 4, top, 6, side],
      [left, top - 2, side, 6],
      [left, top + side - 4, side, 6],
    ] as const)
      expect(mean(x, y, w, h)).toBeLessThan(paper - 10);
  });
});

describe("codes that do not make a page", () => {
  const head: SheetHead = {
    sheet: "0badcafe",
    box: 1,
    date: "2026-11-26",
    day: 70,
    page: 1,
    pages: 1,
    size: SHEETS.a4 as Size,
  };
  const photo = { width: 2100, height: 2970, dots: new Uint8Array(2100 * 2970).fill(255) };
  const places = [
    [10, 10],
    [170, 10],
    [10, 257],
    [170, 257],
  ] as const;
  /** The codes of a page, seen straight from above with ten dots to the millimetre. */
  const found = (of: SheetHead, more: (corner: Point, code: number) => Point = (corner) => corner) =>
    cornerCodes(of, [[1042, 1043]]).map((text, code): FoundCode => {
      const [x, y] = places[code] as Point;
      const at = (dx: number, dy: number): Point => more([10 * (x + dx), 10 * (y + dy)], code);
      return { text, corners: [at(0, 0), at(30, 0), at(30, 30), at(0, 30)] };
    });
  const refusal = (codes: readonly FoundCode[]) => {
    const read = readPage(photo, codes);
    return read.ok ? null : read.error;
  };

  it("are none, foreign ones, those of a newer layout, and too few", () => {
    const [first] = found(head) as [FoundCode];
    expect(refusal([])).toEqual({ kind: "no-sheet" });
    expect(refusal([{ ...first, text: "1042-9" }])).toEqual({ kind: "no-sheet" });
    expect(refusal([{ ...first, text: "LH2…" }])).toEqual({ kind: "newer-sheet" });
    expect(refusal(found(head).slice(0, 2))).toEqual({ kind: "few-codes", found: 2 });
  });

  it("are those of two pages", () => {
    expect(refusal([...found(head), ...found({ ...head, pages: 2, page: 2 })])).toEqual({ kind: "several-pages" });
    expect(refusal([...found(head), ...found(head)])).toEqual({ kind: "several-pages" });
  });

  it("are those that lie where no flat page could have them", () => {
    const bent = found(head, ([x, y], code) => (code === 3 ? [x + 250, y - 150] : [x, y]));
    expect(refusal(bent)).toEqual({ kind: "bent" });
  });

  it("are those of a page of which the boxes cannot be seen", () => {
    expect(refusal(found(head))).toEqual({ kind: "blurred" });
    expect(refusal(found(head, ([x, y]) => [x / 5, y / 5]))).toEqual({ kind: "too-small" });
    expect(refusal(found(head, ([x, y]) => [x - 400, y]))).toEqual({ kind: "cut-off" });
  });
});
