import { describe, expect, it } from "vitest";
import { idAt } from "../../../tests/support/any-log.ts";
import { plainChart } from "../chart/make-chart.ts";
import type { Answer, CardLogEntry, OutcomeEntry, Pass } from "../log/entry.ts";
import { type Applied, applyEntry, FRESH_CARD } from "./placement.ts";

const CARD = "vega:forward";
const chart = plainChart(7);
let seconds = 0;
const next = () => ({ id: idAt(0, ++seconds), box: "box", at: 0, card: CARD });

const outcome = (pass: Pass, answer: Answer, day: number): OutcomeEntry => ({
  ...next(),
  kind: "outcome",
  day,
  sitting: `sitting of day ${day}`,
  pass,
  answer,
  compartment: 0,
  bundle: 0,
  seconds: null,
});
const introduced = (day: number) => outcome("introduction", "recalled", day);
const visited = (answer: Answer, day: number) => outcome("visit", answer, day);
const moved = (to: number | "kept" | "stock", day: number): CardLogEntry => ({ ...next(), kind: "move", to, day });
const withdrawn = (): CardLogEntry => ({ ...next(), kind: "withdraw", day: 1, reason: "hand" });
const broughtBack = (): CardLogEntry => ({ ...next(), kind: "bring-back", day: 1 });

/** The card after these entries, and what the newest of them came to. */
const after = (...entries: CardLogEntry[]): Applied =>
  entries.reduce((before, entry) => applyEntry(chart, before.state, entry), {
    state: FRESH_CARD,
    ignored: null,
  } as Applied);
const placeAfter = (...entries: CardLogEntry[]) => after(...entries).state.place;
const verdict = (...entries: CardLogEntry[]) => after(...entries).ignored;

// Worked by hand on the plain chart: compartment 2 is visited on odd days, 3 on 2, 6, 10, 4 on 4, 12, 20.
describe("a card's place", () => {
  it("is compartment 1 on the day it is introduced, due the day after", () => {
    expect(placeAfter(introduced(1))).toEqual({ kind: "compartment", compartment: 1, bundle: 1, due: 2 });
  });

  it("is the stock as long as its introduction is missed", () => {
    expect(placeAfter(outcome("introduction", "missed", 1))).toEqual({ kind: "stock" });
  });

  it("is one compartment higher after a recall, due on that compartment's next visit", () => {
    expect(placeAfter(introduced(1), visited("recalled", 2))).toMatchObject({ compartment: 2, due: 3 });
    expect(placeAfter(introduced(1), visited("recalled", 2), visited("recalled", 3))).toMatchObject({
      compartment: 3,
      due: 6,
    });
  });

  it("is compartment 1 after a miss, from wherever it lay", () => {
    const up = [introduced(1), visited("recalled", 2), visited("recalled", 3)];
    expect(placeAfter(...up, visited("missed", 6))).toEqual({ kind: "compartment", compartment: 1, bundle: 1, due: 7 });
  });

  it("is the kept shelf after a recall in the last compartment", () => {
    expect(placeAfter(moved(7, 1), visited("recalled", 32))).toEqual({ kind: "kept" });
  });

  it("is not changed by the second pass", () => {
    const missed = [introduced(1), visited("missed", 2)];
    expect(placeAfter(...missed, outcome("second", "recalled", 2))).toEqual(placeAfter(...missed));
  });

  it("is where it was when a withdrawn card is brought back", () => {
    expect(placeAfter(moved(4, 1), withdrawn())).toMatchObject({ kind: "withdrawn", from: { compartment: 4 } });
    expect(placeAfter(moved(4, 1), withdrawn(), broughtBack())).toEqual(placeAfter(moved(4, 1)));
  });
});

describe("an entry that cannot count", () => {
  it("is a second visit in one sitting", () => {
    const again = { ...visited("recalled", 2), day: 9 };
    expect(verdict(introduced(1), { ...visited("missed", 2), sitting: again.sitting }, again)).toBe("asked-already");
  });

  it("is a visit before the card is due", () => {
    expect(verdict(moved(3, 1), visited("recalled", 1))).toBe("not-due");
  });

  it("is a visit to a card that lies in no compartment", () => {
    expect(verdict(visited("recalled", 1))).toBe("not-in-box");
    expect(verdict(introduced(1), withdrawn(), visited("recalled", 2))).toBe("withdrawn");
  });

  it("is a second introduction", () => {
    expect(verdict(introduced(1), introduced(2))).toBe("not-in-stock");
  });

  it("is a move to a compartment that the chart does not have", () => {
    expect(verdict(moved(8, 1))).toBe("no-such-place");
  });

  it("is a withdrawal from outside the box, or a bringing back from inside", () => {
    expect(verdict(withdrawn(), withdrawn())).toBe("withdrawn");
    expect(verdict(broughtBack())).toBe("not-in-box");
  });
});
