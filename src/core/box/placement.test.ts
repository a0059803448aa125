import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shortChart } from "../../../tests/support/any-chart.ts";
import { anyLog, delivered, idAt } from "../../../tests/support/any-log.ts";
import { bundleVisited, compartmentCount } from "../chart/chart.ts";
import { plainChart } from "../chart/make-chart.ts";
import type { Answer, CardLogEntry, LogEntry, OutcomeEntry, Pass } from "../log/entry.ts";
import { applyEntry, type CardState, FRESH_CARD, foldCard, foldLog } from "./placement.ts";

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
const takeBack = (entry: string): LogEntry => ({ id: idAt(0, ++seconds), box: "box", at: 0, kind: "take-back", entry });

const placeAfter = (...entries: CardLogEntry[]) => foldCard(chart, entries, new Set()).place;

/** What the newest entry came to. */
function verdict(...entries: CardLogEntry[]): string | null {
  let state: CardState = FRESH_CARD;
  let ignored: string | null = null;
  for (const entry of entries) ({ state, ignored } = applyEntry(chart, state, entry));
  return ignored;
}

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

describe("an entry that was taken back", () => {
  it("leaves the card as if it had not happened, even if the news of it comes first", () => {
    const start = introduced(1);
    const slip = visited("missed", 2);
    const whole = foldLog(chart, [takeBack(slip.id), start, slip]);
    expect(whole.get(CARD)).toEqual(foldCard(chart, [start], new Set()));
  });
});

describe("replaying any log", () => {
  it("gives one placement in whatever order, and however often, its entries are delivered", () => {
    fc.assert(
      fc.property(
        shortChart,
        anyLog.chain((log) => fc.tuple(fc.constant(log), delivered(log))),
        (anyOf, [log, arrived]) => {
          const inOrder = foldLog(anyOf, log);
          const replayed = foldLog(anyOf, arrived);
          expect(new Map([...replayed].sort())).toEqual(new Map([...inOrder].sort()));
        },
      ),
    );
  });

  it("gives the same as applying each entry as it comes, where nothing was taken back", () => {
    fc.assert(
      fc.property(shortChart, anyLog, (anyOf, log) => {
        const states = new Map<string, CardState>();
        for (const entry of log) {
          if (!("card" in entry)) continue;
          states.set(entry.card, applyEntry(anyOf, states.get(entry.card) ?? FRESH_CARD, entry).state);
        }
        const kept = log.filter((entry) => entry.kind !== "take-back");
        expect(foldLog(anyOf, kept)).toEqual(states);
      }),
    );
  });

  it("puts each card in a place that the box has, due when its bundle is visited", () => {
    fc.assert(
      fc.property(shortChart, anyLog, (anyOf, log) => {
        for (const { place } of foldLog(anyOf, log).values()) {
          const inside = place.kind === "withdrawn" ? place.from : place;
          if (inside.kind !== "compartment") continue;
          expect(inside.compartment).toBeLessThanOrEqual(compartmentCount(anyOf));
          expect(bundleVisited(anyOf, inside.compartment, inside.due)).toBe(inside.bundle);
        }
      }),
    );
  });

  it("never lets one sitting count two visits of a card", () => {
    fc.assert(
      fc.property(shortChart, anyLog, (anyOf, log) => {
        const states = new Map<string, CardState>();
        const asked = new Set<string>();
        for (const entry of log) {
          if (!("card" in entry)) continue;
          const { state, ignored } = applyEntry(anyOf, states.get(entry.card) ?? FRESH_CARD, entry);
          states.set(entry.card, state);
          if (entry.kind !== "outcome" || entry.pass !== "visit" || ignored !== null) continue;
          const key = `${entry.card} ${entry.sitting}`;
          expect(asked.has(key)).toBe(false);
          asked.add(key);
        }
      }),
    );
  });
});
