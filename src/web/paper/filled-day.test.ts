import { describe, expect, it } from "vitest";
import type { PaperDayView } from "../../app/views.ts";
import { printedNumber } from "../../core/cards/card-number.ts";
import { filledBy, readDay, UNTOUCHED } from "./filled-day.ts";

const VIEW: PaperDayView = {
  dates: ["2026-03-14"],
  recorded: [],
  date: "2026-03-14",
  day: 3,
  piles: [
    { compartment: 2, bundle: 1, numbers: [4, 9] },
    { compartment: 1, bundle: 1, numbers: [11] },
  ],
  newCards: [20, 21],
  undo: null,
};

describe("a day on paper", () => {
  it("that nobody touched says that everything due was recalled", () => {
    expect(readDay(VIEW, UNTOUCHED)).toMatchObject({
      order: { date: "2026-03-14", asked: [4, 9, 11], missed: [], introduced: [] },
      isEmpty: false,
      isSound: true,
    });
  });

  it("counts a missed card as asked, though its pile was not", () => {
    const { order } = readDay(VIEW, { ...UNTOUCHED, left: new Set([4, 9]), missed: printedNumber(9) });
    expect(order).toMatchObject({ asked: [9, 11], missed: [9] });
  });

  it("is empty where no pile was asked and no card is new, and not sound with a number that is none", () => {
    expect(readDay(VIEW, { ...UNTOUCHED, left: new Set([4, 9, 11]) }).isEmpty).toBe(true);
    expect(readDay(VIEW, { ...UNTOUCHED, missed: "573-4" }).isSound).toBe(false);
    expect(readDay(VIEW, { ...UNTOUCHED, others: "573-4" }).isSound).toBe(false);
  });

  it("read from a sheet keeps new cards that are not the ones it would have now", () => {
    const reading = { sheet: "a", date: VIEW.date, day: 3, asked: [4, 11, 20, 57], missed: [11, 57] };
    const filled = filledBy(VIEW, reading);
    expect(filled.others).toBe(printedNumber(57));
    expect(readDay(VIEW, filled).order).toEqual({
      date: VIEW.date,
      asked: [4, 11],
      missed: [11, 57],
      introduced: [20, 57],
    });
  });
});
