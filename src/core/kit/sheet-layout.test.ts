import fc from "fast-check";
import { correction, generate } from "lean-qr";
import { describe, expect, it } from "vitest";
import { SHEETS, type Size } from "./paper.ts";
import { type CornerCode, joinCodes, parseCornerCode } from "./sheet-code.ts";
import { cornerPlaces, FIRST_LINE, SHEET, type SheetPile, sheetLayout, tickBoxes } from "./sheet-layout.ts";

const anyPiles: fc.Arbitrary<readonly SheetPile[]> = fc.array(
  fc.record({
    title: fc.constant("Compartment 1"),
    numbers: fc.uniqueArray(fc.integer({ min: 1, max: 999_999 }), { minLength: 1, maxLength: 220 }),
  }),
  { minLength: 1, maxLength: 6 },
);

const anySize = fc.constantFrom(...Object.values(SHEETS));

const layout = (piles: readonly SheetPile[], size: Size) =>
  sheetLayout({ title: "Sitting", piles, from: { box: "box", date: "2026-11-26", day: 70 } }, size);

describe("the layout of a sheet", () => {
  it("has a box for every card once, and one for each pile of a page", () => {
    fc.assert(
      fc.property(anyPiles, anySize, (piles, size) => {
        const pages = layout(piles, size);
        const numbers = pages.flatMap(({ boxes }) => boxes.flatMap(({ number }) => number ?? []));
        expect(numbers).toEqual(piles.flatMap((pile) => pile.numbers.toSorted((a, b) => a - b)));
        for (const { boxes, parts } of pages)
          expect(boxes.filter(({ number }) => number === null)).toHaveLength(parts.length);
      }),
      { numRuns: 40 },
    );
  });

  it("keeps boxes apart from one another and from the codes", () => {
    fc.assert(
      fc.property(anyPiles, anySize, (piles, size) => {
        for (const { boxes } of layout(piles, size)) {
          for (const { x, y } of boxes) {
            expect(y).toBeGreaterThanOrEqual(FIRST_LINE);
            expect(y + SHEET.box).toBeLessThanOrEqual((cornerPlaces(size)[2]?.[1] as number) - SHEET.quiet);
            expect(x + SHEET.box).toBeLessThanOrEqual(size.width - SHEET.margin);
          }
          const apart = boxes.every((one, i) =>
            boxes.every((other, j) => i === j || Math.max(Math.abs(one.x - other.x), Math.abs(one.y - other.y)) > 8),
          );
          expect(apart).toBe(true);
        }
      }),
      { numRuns: 20 },
    );
  });

  it("is worked out again from what the codes hold", () => {
    fc.assert(
      fc.property(anyPiles, anySize, (piles, size) => {
        for (const page of layout(piles, size)) {
          const codes = page.codes.flatMap((text) => {
            const code = parseCornerCode(text);
            return code.ok ? [code.value] : [];
          });
          const parts = joinCodes(codes.slice(1));
          const [first] = codes as [CornerCode, ...CornerCode[]];
          const { size: read, ...head } = first.head;
          expect(head).toEqual({ ...page.head, size: undefined });
          expect(read.width).toBeCloseTo(size.width);
          expect(parts).toEqual(page.parts);
          expect(tickBoxes(parts ?? [], read).map(({ x, y }) => [x.toFixed(3), y.toFixed(3)])).toEqual(
            page.boxes.map(({ x, y }) => [x.toFixed(3), y.toFixed(3)]),
          );
        }
      }),
      { numRuns: 40 },
    );
  });

  it("has codes of 18 mm and more with modules of 0.8 mm and more, whatever the numbers", () => {
    fc.assert(
      fc.property(anyPiles, anySize, (piles, size) => {
        for (const { codes } of layout(piles, size))
          for (const text of codes) {
            const modules = generate(text, { minCorrectionLevel: correction.M }).size;
            expect(SHEET.code / modules).toBeGreaterThanOrEqual(0.8);
            // The quiet zone of four modules that ISO/IEC 18004 asks for.
            expect(SHEET.quiet).toBeGreaterThanOrEqual((4 * SHEET.code) / modules);
          }
      }),
      { numRuns: 10 },
    );
    expect(SHEET.code).toBeGreaterThanOrEqual(18);
  });

  it("has no page when no card is due", () => {
    expect(layout([{ title: "Nothing is due today", numbers: [] }], SHEETS.a4 as Size)).toEqual([]);
  });
});
