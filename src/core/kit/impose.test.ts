import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { behind, impose, type Slot, type Turn } from "./impose.ts";
import { parseCardSize, SHEETS, type Size } from "./paper.ts";

/** Sums of inches and millimetres in floating point. */
const ROUNDING = 1e-9;

const size = (text: string): Size => {
  const parsed = parseCardSize(text);
  if (!parsed.ok) throw new Error(parsed.error);
  return parsed.value;
};

const sheets = fc.constantFrom(...Object.values(SHEETS));
const cards = fc
  .tuple(fc.double({ min: 40, max: 200, noNaN: true }), fc.double({ min: 40, max: 200, noNaN: true }))
  .map(([a, b]): Size => ({ width: Math.max(a, b), height: Math.min(a, b) }));
const turns = fc.constantFrom<Turn>("long", "short", "fold");

const centre = (slot: Slot) => [slot.x + slot.width / 2, slot.y + slot.height / 2] as const;

const apart = (a: Slot, b: Slot): boolean =>
  a.x + a.width <= b.x + ROUNDING ||
  b.x + b.width <= a.x + ROUNDING ||
  a.y + a.height <= b.y + ROUNDING ||
  b.y + b.height <= a.y + ROUNDING;

/** A hair smaller, so that rounding is no overlap. */
const hairless = (slot: Slot): Slot => ({
  ...slot,
  x: slot.x + 1e-6,
  y: slot.y + 1e-6,
  width: slot.width - 2e-6,
  height: slot.height - 2e-6,
});

describe("cards on a sheet", () => {
  it.each([
    // ISO 216: eight A7 and four A6 make an A4. The others are worked out by hand.
    ["a4", "a7", 8],
    ["a4", "a6", 4],
    ["a4", "3x5in", 4],
    ["a4", "85x55mm", 10],
    ["letter", "a7", 6],
    ["letter", "3x5in", 4],
  ])("%s holds as many %s as fit: %i", (sheet, card, count) => {
    const laid = impose(SHEETS[sheet] as Size, size(card), "long");
    expect(laid.ok && laid.value.fronts.length).toBe(count);
  });

  it("lie within the sheet and do not overlap", () => {
    fc.assert(
      fc.property(sheets, cards, turns, (sheet, card, turn) => {
        const laid = impose(sheet, card, turn);
        if (!laid.ok) return;
        const { grid, fronts, backs } = laid.value;
        const pages = turn === "fold" ? [[...fronts, ...backs]] : [fronts, backs];
        for (const page of pages)
          for (const [i, slot] of page.entries()) {
            expect(slot.x).toBeGreaterThanOrEqual(-ROUNDING * 1000);
            expect(slot.y).toBeGreaterThanOrEqual(-ROUNDING * 1000);
            expect(slot.x + slot.width).toBeLessThanOrEqual(grid.sheet.width + ROUNDING * 1000);
            expect(slot.y + slot.height).toBeLessThanOrEqual(grid.sheet.height + ROUNDING * 1000);
            for (const other of page.slice(i + 1)) expect(apart(slot, other)).toBe(true);
          }
      }),
    );
  });

  it("have their backs exactly behind their fronts after turning over either edge", () => {
    fc.assert(
      fc.property(sheets, cards, fc.constantFrom("long" as const, "short" as const), (sheet, card, turn) => {
        const laid = impose(sheet, card, turn);
        if (!laid.ok) return;
        const { width, height } = laid.value.grid.sheet;
        // Over a vertical edge x is mirrored, over a horizontal one y: the long edge of an upright sheet is vertical.
        const vertical = (turn === "long") === height > width;
        for (const [i, front] of laid.value.fronts.entries()) {
          const [x, y] = centre(laid.value.backs[i] as Slot);
          const [u, v] = centre(front);
          expect(Math.abs((vertical ? width - x : x) - u)).toBeLessThan(ROUNDING);
          expect(Math.abs((vertical ? y : height - y) - v)).toBeLessThan(ROUNDING);
        }
      }),
    );
  });

  it("fold along the edge that front and back share", () => {
    fc.assert(
      fc.property(sheets, cards, (sheet, card) => {
        const laid = impose(sheet, card, "fold");
        if (!laid.ok) return;
        for (const [i, front] of laid.value.fronts.entries()) {
          const back = laid.value.backs[i] as Slot;
          if (back.turned) expect([back.x, back.y]).toEqual([front.x, front.y + front.height]);
          else expect([back.x, back.y]).toEqual([front.x + front.width, front.y]);
        }
      }),
    );
  });

  it("keep so far apart that pictures can run past every cut but never over a fold or each other", () => {
    fc.assert(
      fc.property(sheets, cards, turns, fc.constantFrom(1, 2, 3.5), (sheet, card, turn, bleed) => {
        const laid = impose(sheet, card, turn, bleed);
        if (!laid.ok) return;
        const { grid, fronts, backs } = laid.value;
        const pages = turn === "fold" ? [[...fronts, ...backs]] : [fronts, backs];
        for (const page of pages)
          for (const [i, slot] of page.entries()) {
            const { spread } = slot;
            expect(spread.turned).toBe(slot.turned);
            const past = [slot.x - spread.x, slot.y - spread.y];
            past.push(spread.width - slot.width - (past[0] ?? 0), spread.height - slot.height - (past[1] ?? 0));
            const folded = past.filter((by) => Math.abs(by) < ROUNDING * 1000);
            expect(folded).toHaveLength(turn === "fold" ? 1 : 0);
            for (const by of past.filter((one) => !folded.includes(one))) expect(by).toBeCloseTo(bleed, 6);
            expect(Math.min(spread.x, spread.y)).toBeGreaterThanOrEqual(-ROUNDING * 1000);
            expect(spread.x + spread.width).toBeLessThanOrEqual(grid.sheet.width + ROUNDING * 1000);
            expect(spread.y + spread.height).toBeLessThanOrEqual(grid.sheet.height + ROUNDING * 1000);
            for (const other of page.slice(i + 1)) expect(apart(spread, hairless(other.spread))).toBe(true);
          }
      }),
    );
  });

  it("are refused with both sizes named when not even one fits", () => {
    expect(impose(SHEETS.a4 as Size, { width: 300, height: 200 }, "long")).toMatchObject({
      ok: false,
      error: expect.stringContaining("300 × 200 mm does not fit on a sheet of 210 × 297 mm"),
    });
  });

  it("turned twice are where they were", () => {
    fc.assert(
      fc.property(sheets, fc.constantFrom("long" as const, "short" as const), (sheet, turn) => {
        const slot = { x: 10, y: 20, width: 60, height: 40, turned: false };
        const again = behind(sheet, behind(sheet, slot, turn), turn);
        expect(again.turned).toBe(false);
        expect(again.x).toBeCloseTo(slot.x);
        expect(again.y).toBeCloseTo(slot.y);
      }),
    );
  });
});

describe("a card size", () => {
  it.each([
    // ISO 216; 3 × 5 in = 76.2 × 127.0 mm exactly.
    ["A7", 105, 74],
    ["a6", 148, 105],
    ["3x5in", 127, 76.2],
    ["55x85mm", 85, 55],
  ])("%s is %d × %d mm, lying", (text, width, height) => {
    expect(size(text).width).toBeCloseTo(width, 9);
    expect(size(text).height).toBeCloseTo(height, 9);
  });

  it.each(["", "a5x", "3x5", "0x5mm", "10x10mm", "toString"])("“%s” is refused", (text) => {
    expect(parseCardSize(text)).toMatchObject({ ok: false });
  });
});
