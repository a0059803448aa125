import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cardSize, kitCard, kitPlan } from "../../../tests/support/kit-plan.ts";
import { KIT_PARTS, kitPages } from "./kit-pages.ts";
import { kitSheet } from "./kit-sheet.ts";

const sheetOf = (plan: ReturnType<typeof kitPlan>, wanted: number) => {
  const sheet = kitSheet(plan, wanted);
  if (!sheet.ok) throw new Error(sheet.error);
  return sheet.value;
};

const pagesOf = (plan: ReturnType<typeof kitPlan>) => {
  const pages = kitPages(plan);
  if (!pages.ok) throw new Error(pages.error);
  return pages.value;
};

const cards = Array.from({ length: 30 }, (_, i) => kitCard(i + 1, `prompt ${i + 1}`, `answer ${i + 1}`));

const plans = fc
  .record({
    parts: fc.subarray([...KIT_PARTS], { minLength: 1 }).map((parts) => new Set(parts)),
    turn: fc.constantFrom("long", "short", "fold"),
    cards: fc.integer({ min: 0, max: cards.length }).map((count) => cards.slice(0, count)),
    pack: fc.option(
      fc.integer({ min: 1, max: 4 }).map((count) => ({
        names: Array.from({ length: count }, (_, i) => `guide ${i}`),
        onCards: true,
      })),
      { nil: undefined },
    ),
  })
  .map(({ pack, ...rest }) => kitPlan({ ...rest, ...(pack ? { pack } : {}) }));

describe("the sheets of a kit", () => {
  it("are, one after another, the pages of the first box, and as many as are counted", () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { parts, allPages } = sheetOf(plan, 0);
        const total = parts.reduce((sum, { sheets }) => sum + sheets, 0);
        const shown = Array.from({ length: total }, (_, i) => sheetOf(plan, i)).flatMap(({ pages }) => pages);
        const { pack } = plan;
        const first = pack ? { ...plan, pack: { ...pack, names: pack.names.slice(0, 1) } } : plan;
        expect(shown).toEqual(pagesOf(first));
        expect(allPages).toBe(pagesOf(plan).length);
      }),
      { numRuns: 30 },
    );
  });

  it("end with the last, whichever is asked for beyond it, and are none of nothing", () => {
    const plan = kitPlan({ cards });
    expect(sheetOf(plan, 99)).toEqual(sheetOf(plan, 3));
    expect(sheetOf(plan, 99).sheet).toBe(3);
    expect(sheetOf(kitPlan({ cards: [] }), 5)).toEqual({ sheet: 0, parts: [], pages: [], allPages: 0 });
  });

  it("are refused with the reason where a card is larger than the sheet", () => {
    expect(kitSheet(kitPlan({ cards, card: cardSize("300x400mm") }), 0)).toMatchObject({ ok: false });
  });
});
