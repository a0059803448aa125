import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addDays } from "../calendar/local-date.ts";
import { printedNumber } from "../cards/card-number.ts";
import { type CardSide, EMPTY_SIDE } from "../cards/cards.ts";
import { cycleLength, visitsOn } from "../chart/chart.ts";
import { doublingPeriods, spreadChart } from "../chart/make-chart.ts";
import type { KitCard } from "./card-faces.ts";
import { coarsePictures, KIT_PARTS, type KitPlan, kitPages } from "./kit-pages.ts";
import type { KitPage, TextItem } from "./page.ts";
import { SHEETS, type Size } from "./paper.ts";

/** Sums of millimetres in floating point. */
const ROUNDING = 1e-6;

const chart = spreadChart(doublingPeriods(7), [1, 1, 1, 1, 1, 1, 1]);
const side = (text: string): CardSide => ({ ...EMPTY_SIDE, text: [{ text, role: "plain" }] });
const card = (number: number): KitCard => ({
  number,
  prompt: side(`prompt ${number}`),
  answer: side(`answer ${number}`),
  note: "a note",
  story: "",
  source: "",
  why: "",
  pictureAlt: "",
  pictureSource: "",
  pictureLicence: "",
});

const plan = (more: Partial<KitPlan>): KitPlan => ({
  parts: new Set(KIT_PARTS),
  sheet: SHEETS.a4 as Size,
  card: { width: 105, height: 74 },
  turn: "long",
  offset: [0, 0],
  bleed: 0,
  style: { title: "The night sky", mark: "both", language: "en" },
  cards: [card(1)],
  chart,
  days: [],
  sitting: { title: "Sitting", piles: [] },
  ...more,
});

const pagesOf = (more: Partial<KitPlan>): readonly KitPage[] => {
  const pages = kitPages(plan(more), () => undefined);
  if (!pages.ok) throw new Error(pages.error);
  return pages.value;
};

const textsOf = (pages: readonly KitPage[]): readonly string[] =>
  pages.flatMap((page) => page.items.flatMap((item) => (item.kind === "text" ? item.runs.map((run) => run.text) : [])));

describe("the pages of a kit", () => {
  it("hold every card once on a front and once on a back, for any number of cards", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.constantFrom("long", "short", "fold"), (count, turn) => {
        const cards = Array.from({ length: count }, (_, i) => card(i + 1));
        const texts = textsOf(pagesOf({ parts: new Set(["cards"]), cards, turn }));
        for (const what of ["prompt", "answer"])
          expect(texts.filter((text) => text.startsWith(what))).toEqual(cards.map(({ number }) => `${what} ${number}`));
      }),
    );
  });

  it("put nothing outside the sheet", () => {
    fc.assert(
      fc.property(
        fc.subarray([...KIT_PARTS], { minLength: 1 }),
        fc.constantFrom(...Object.values(SHEETS)),
        fc.constantFrom("long", "short", "fold"),
        fc.integer({ min: 1, max: 30 }),
        (parts, sheet, turn, count) => {
          const cards = Array.from({ length: count }, (_, i) => card(i + 1));
          const days = Array.from({ length: 64 }, (_, i) => ({
            date: addDays("2026-11-25", i),
            chartDay: i + 1,
            piles: ["1"],
          }));
          for (const { width, height, items } of pagesOf({ parts: new Set(parts), sheet, turn, cards, days }))
            for (const item of items) {
              if (item.kind === "line") continue;
              expect(item.x).toBeGreaterThanOrEqual(-ROUNDING);
              expect(item.y).toBeGreaterThanOrEqual(-ROUNDING);
              expect(item.x + item.width).toBeLessThanOrEqual(width + ROUNDING);
              expect(item.y + item.height).toBeLessThanOrEqual(height + ROUNDING);
            }
        },
      ),
      { numRuns: 40 },
    );
  });

  it("begin every part on a front when both sides are printed", () => {
    for (const turn of ["long", "short"] as const) expect(pagesOf({ turn }).length % 2).toBe(0);
    const [, back] = pagesOf({ parts: new Set(["instructions"]) });
    expect(back?.items).toEqual([]);
    expect(pagesOf({ parts: new Set(["instructions"]), turn: "fold" })).toHaveLength(1);
  });

  it("show every day of the cycle in the table with what the chart visits on it", () => {
    const items = pagesOf({ parts: new Set(["ruler", "chart"]) }).flatMap((page) => page.items);
    const named = new Map(items.flatMap((item) => (item.kind === "text" ? [[item.name, item] as const] : [])));
    for (let day = 1; day <= cycleLength(chart); day++) {
      const piles = (named.get(`day ${day} of the chart`) as TextItem).runs[0]?.text;
      expect(piles).toBe(
        visitsOn(chart, day)
          .map((visit) => `${visit.compartment}`)
          .join(", "),
      );
    }
  });

  it("lay every date into the column of its weekday, over years and months", () => {
    const days = Array.from({ length: 64 }, (_, i) => ({ date: addDays("2026-11-25", i), chartDay: i + 1, piles: [] }));
    const items = pagesOf({ parts: new Set(["calendar"]), days }).flatMap((page) => page.items);
    const at = (text: string) =>
      items.find((item): item is TextItem => item.kind === "text" && item.runs[0]?.text === text);
    // 25 November 2026 is a Wednesday and 1 January 2027 a Friday (any perpetual calendar).
    const columnOf = (x: number | undefined) => Math.floor(((x ?? 0) - 12) / ((210 - 24) / 7));
    expect(columnOf(at("25 Nov")?.x)).toBe(2);
    expect(columnOf(at("1 Jan")?.x)).toBe(4);
  });

  it("list every number of the sitting once, with its check digit", () => {
    const numbers = Array.from({ length: 700 }, (_, i) => 3 * i + 1);
    const from = { box: "box", date: "2026-11-25", day: 7 };
    const sitting = { title: "Sitting", piles: [{ title: "Compartment 3", numbers }], from };
    const texts = textsOf(pagesOf({ parts: new Set(["sheet"]), sitting }));
    expect(texts.filter((text) => /^\d+-\d$/.test(text))).toEqual(numbers.map(printedNumber));
    expect(texts).toContain("Compartment 3: 700 cards");
  });

  it("give the sitting four codes on each page, and none on paper that is too small for them", () => {
    const from = { box: "box", date: "2026-11-25", day: 7 };
    const piles = [{ title: "Compartment 3", numbers: Array.from({ length: 700 }, (_, i) => i + 1) }];
    const codesOn = (sheet: Size) =>
      pagesOf({ parts: new Set(["sheet"]), sheet, turn: "fold", sitting: { title: "Sitting", piles, from } }).map(
        ({ items }) => items.filter(({ kind }) => kind === "code").length,
      );
    expect(new Set(codesOn(SHEETS.a4 as Size))).toEqual(new Set([4]));
    expect(new Set(codesOn({ width: 148, height: 105 }))).toEqual(new Set([0]));
  });
});

describe("a picture in print", () => {
  it("is told to be coarse by the dots an inch at which it is printed", () => {
    const cards = [{ ...card(1042), answer: { ...EMPTY_SIDE, picture: "p" }, note: "" }];
    const pages = pagesOf({ parts: new Set(["cards"]), cards });
    // The room is 93 × 58 mm; fitted by its height, 290 dots on 58 mm are 127 an inch.
    expect(coarsePictures(pages, () => ({ width: 290, height: 290 }))).toEqual([
      expect.stringContaining("127 dots an inch"),
    ]);
    expect(coarsePictures(pages, () => ({ width: 343, height: 343 }))).toEqual([]);
  });
});
