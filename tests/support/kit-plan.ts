// Plans of kits for the tests of printing: everything usual, with what differs.
import { type CardSide, EMPTY_SIDE } from "../../src/core/cards/cards.ts";
import { spreadChart } from "../../src/core/chart/make-chart.ts";
import type { KitCard } from "../../src/core/kit/card-faces.ts";
import type { KitPlan } from "../../src/core/kit/kit-pages.ts";
import { parseCardSize, SHEETS, type Size } from "../../src/core/kit/paper.ts";

/** The size of cards that a text names. */
export const cardSize = (text: string): Size => {
  const parsed = parseCardSize(text);
  if (!parsed.ok) throw new Error(parsed.error);
  return parsed.value;
};

/** A side with nothing but words. */
export const words = (text: string): CardSide => ({ ...EMPTY_SIDE, text: [{ text, role: "plain" }] });

/** A card with nothing but words. */
export const kitCard = (number: number, prompt: string, answer: string, note = ""): KitCard => ({
  number,
  prompt: words(prompt),
  answer: words(answer),
  note,
  story: "",
  source: "",
  why: "",
  pictureAlt: "",
  pictureSource: "",
  pictureLicence: "",
});

/** Cards of A7 on A4, turned over the long edge, and a small box around them. */
export const kitPlan = (more: Partial<KitPlan>): KitPlan => ({
  parts: new Set(["cards"]),
  sheet: SHEETS.a4 as Size,
  card: cardSize("a7"),
  turn: "long",
  offset: [0, 0],
  bleed: 0,
  style: { title: "The night sky", mark: "number", language: "en" },
  cards: [],
  chart: spreadChart([1, 2, 4, 8], [1, 1, 2, 2]),
  days: [{ date: "2026-03-14", chartDay: 1, piles: ["2", "1"] }],
  sitting: {
    title: "Sitting of 14 Mar 2026",
    piles: [{ title: "Compartment 1", numbers: [1042] }],
    from: { box: "box", date: "2026-03-14", day: 1 },
  },
  ...more,
});
