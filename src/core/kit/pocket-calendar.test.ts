import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cardSize, kitPlan } from "../../../tests/support/kit-plan.ts";
import { addDays } from "../calendar/local-date.ts";
import { shortDate } from "./calendar-pages.ts";
import { kitPages } from "./kit-pages.ts";
import type { KitPage, TextItem } from "./page.ts";

/** Sums of millimetres in floating point. */
const ROUNDING = 1e-6;

const datesFrom = (first: string, count: number) =>
  Array.from({ length: count }, (_, i) => ({
    date: addDays(first, i),
    chartDay: i % 7 === 6 ? null : i + 1,
    piles: ["3", "2", "1"],
  }));

const pocket = (more: Parameters<typeof kitPlan>[0]): readonly KitPage[] => {
  const pages = kitPages(kitPlan({ parts: new Set(["pocket"]), ...more }));
  if (!pages.ok) throw new Error(pages.error);
  return pages.value;
};

const texts = (page: KitPage | undefined): readonly TextItem[] =>
  (page?.items ?? []).filter((item): item is TextItem => item.kind === "text");

const wordsOf = (page: KitPage | undefined): readonly string[] => texts(page).map((item) => item.runs[0]?.text ?? "");

describe("a pocket calendar", () => {
  it("holds every date once, four weeks on a side", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 0, max: 400 }),
        fc.constantFrom("long", "short", "fold"),
        fc.constantFrom("a7", "85x55mm"),
        (count, shift, turn, card) => {
          const days = datesFrom(addDays("2026-11-25", shift), count);
          const found = pocket({ days, turn, card: cardSize(card) })
            .flatMap(texts)
            .flatMap((item) => /^(\d{4}-\d{2}-\d{2}) in the pocket calendar$/.exec(item.name)?.[1] ?? []);
          expect([...found].sort()).toEqual(days.map(({ date }) => date));
        },
      ),
      { numRuns: 30 },
    );
  });

  it("has weeks 1 to 4 on the front and 5 to 8 behind them, each date under its weekday", () => {
    // 30 November 2026 is a Monday (any perpetual calendar), so 56 dates fill eight weeks.
    const days = datesFrom("2026-11-30", 56);
    const [front, back] = pocket({ days });
    expect(wordsOf(front)[0]).toBe("30 Nov 2026 to 27 Dec 2026");
    expect(wordsOf(back)[0]).toBe("28 Dec 2026 to 24 Jan 2027");
    const at = (page: KitPage | undefined, text: string) => texts(page).find((item) => item.runs[0]?.text === text)?.x;
    // The columns stand 99 / 7 mm apart, and the date a little further in than its weekday.
    const inset = 0.6;
    for (const [i, name] of ["Mon", "Tue", "Wed"].entries())
      expect((at(front, shortDate(addDays("2026-11-30", i))) ?? 0) - inset).toBeCloseTo(at(front, name) ?? 0, 9);
  });

  it("says rest on a rest day, and the chart day with its piles on the others", () => {
    const words = wordsOf(pocket({ days: datesFrom("2026-11-30", 7) })[0]);
    expect(words.filter((word) => word === "rest")).toHaveLength(1);
    expect(words.filter((word) => word === "3, 2, 1")).toHaveLength(6);
  });

  it("stays inside its card", () => {
    for (const turn of ["long", "short", "fold"] as const)
      for (const page of pocket({ days: datesFrom("2026-11-25", 64), turn }))
        for (const item of page.items) {
          if (item.kind === "line") continue;
          expect(item.x).toBeGreaterThanOrEqual(-ROUNDING);
          expect(item.x + item.width).toBeLessThanOrEqual(page.width + ROUNDING);
          expect(item.y + item.height).toBeLessThanOrEqual(page.height + ROUNDING);
        }
  });
});
