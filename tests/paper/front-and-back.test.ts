// Whether front and back of a printed card lie on each other, by the pages as another program draws them.
import { describe, expect, it } from "vitest";
import { EMPTY_SIDE } from "../../src/core/cards/cards.ts";
import { impose } from "../../src/core/kit/impose.ts";
import { SHEETS, type Size } from "../../src/core/kit/paper.ts";
import { kitCard, cardSize as size } from "../support/kit-plan.ts";
import type { GreyPage } from "../support/pdf-tools.ts";
import { blackSquare, DOT, DPI, REGISTER, reading, squaresOf } from "../support/printed-kit.ts";

const POINT = 25.4 / 72;
const STYLE = { title: "", mark: "none", language: "en" } as const;
const FORMS = ["a7", "a6", "3x5in", "85x55mm", "90x60mm"] as const;
const EDGES = ["long", "short"] as const;

/** Width and height of the first page in millimetres, as the reader tells them. */
function pageSize(info: string): readonly [number, number] {
  const [, width, height] = /^Page +1 size: +([\d.]+) x ([\d.]+) pts/m.exec(info) ?? [];
  return [Number(width) * POINT, Number(height) * POINT];
}

const cases = FORMS.flatMap((form, i) => [
  ...["a4", "letter", "card"].flatMap((paper) => EDGES.map((turn) => [paper, form, turn, 0] as const)),
  // Every sheet and edge meets bleed too, but not with every form.
  ...["a4", "letter", "card"].map((paper, n) => [paper, form, EDGES[(i + n) % 2] ?? "long", 3] as const),
]);

describe("front and back on paper", () => {
  it.each(cases)(
    "of every %s sheet of %s cards lie on each other when it is turned over the %s edge, with %d mm of bleed",
    async (paper, form, turn, bleed) => {
      const square = await blackSquare();
      const side = { ...EMPTY_SIDE, picture: square.hash };
      const sheet = paper === "card" ? size(form) : (SHEETS[paper] as Size);
      // All but the second: a pattern that is its own mirror image would lie on itself wherever the backs are.
      const cards = Array.from({ length: 10 }, (_, i) =>
        i === 1 ? kitCard(2, "Vega", "Lyra") : { ...kitCard(i + 1, "", ""), prompt: side, answer: side },
      );
      await reading(
        { cards, style: STYLE, sheet, card: size(form), turn, bleed },
        (pdf) => {
          const [wide, high] = pageSize(pdf.info);
          const [fronts, backs] = [squaresOf(pdf.draw(1, DPI)), squaresOf(pdf.draw(2, DPI))];
          expect(fronts.length).toBeGreaterThan(0);
          expect(backs).toHaveLength(fronts.length);
          for (const [x, y] of fronts) {
            // Turned over an edge that is upright left and right change places, else top and bottom.
            const [u, v] = (turn === "long") === high > wide ? [wide - x, y] : [x, high - y];
            const off = Math.min(...backs.map(([a, b]) => Math.hypot(a - u, b - v)));
            expect(off).toBeLessThan(REGISTER);
          }
        },
        new Map([[square.hash, square]]),
      );
    },
  );

  it("are set off by what the calibration says, backs only", async () => {
    const square = await blackSquare();
    const side = { ...EMPTY_SIDE, picture: square.hash };
    const cards = [{ ...kitCard(1, "", ""), prompt: side, answer: side }];
    const centres = (offset: readonly [number, number]) =>
      reading(
        { cards, style: STYLE, offset },
        (pdf) => [1, 2].map((n) => squaresOf(pdf.draw(n, DPI))[0]),
        new Map([["black", square]]),
      );
    const [front, back] = await centres([0, 0]);
    const [movedFront, movedBack] = await centres([1.5, -2]);
    expect(movedFront).toEqual(front);
    expect(Math.abs((movedBack?.[0] ?? 0) - (back?.[0] ?? 0) - 1.5)).toBeLessThan(DOT);
    expect(Math.abs((movedBack?.[1] ?? 0) - (back?.[1] ?? 0) + 2)).toBeLessThan(DOT);
  });
});

/** Where lines of a page are that run along x (0) or y (1): rows or columns with more than half of a card's side in grey. */
function linesAlong(axis: 0 | 1, { width, height, dots }: GreyPage, side: number): readonly number[] {
  const count = new Array<number>(axis === 0 ? height : width).fill(0);
  for (const [at, dot] of dots.entries()) {
    const line = axis === 0 ? Math.floor(at / width) : at % width;
    // Squares are black, the line is grey.
    if (dot > 60 && dot < 230) count[line] = (count[line] ?? 0) + 1;
  }
  return count.flatMap((grey, line) => (grey * DOT > side / 3 ? [(line + 0.5) * DOT] : []));
}

describe("front and back of a folded card", () => {
  it.each(FORMS.flatMap((form) => [0, 3].map((bleed) => [form, bleed] as const)))(
    "of %s lie on each other when it is folded along its line, with %d mm of bleed",
    async (form, bleed) => {
      const square = await blackSquare();
      const side = { ...EMPTY_SIDE, picture: square.hash };
      const card = size(form);
      const cards = [{ ...kitCard(1, "", ""), prompt: side, answer: side }];
      await reading(
        { cards, style: STYLE, card, turn: "fold", bleed },
        (pdf) => {
          const page = pdf.draw(1, DPI);
          const [front, back, ...more] = squaresOf(page);
          if (!front || !back) throw new Error("two squares are printed");
          expect(more).toEqual([]);
          const laid = impose(SHEETS.a4 as Size, card, "fold", bleed);
          const below = laid.ok && laid.value.backs[0]?.turned === true;
          const [across, along] = below ? [1, 0] : [0, 1];
          expect(Math.abs((front[along] ?? 0) - (back[along] ?? 0))).toBeLessThan(REGISTER);
          const middle = ((front[across] ?? 0) + (back[across] ?? 0)) / 2;
          const folds = linesAlong(below ? 0 : 1, page, below ? card.width : card.height);
          expect(Math.min(...folds.map((fold) => Math.abs(fold - middle)))).toBeLessThan(REGISTER);
        },
        new Map([[square.hash, square]]),
      );
    },
  );
});
