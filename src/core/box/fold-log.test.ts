import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shortChart } from "../../../tests/support/any-chart.ts";
import { anyLog, delivered, setUpWith } from "../../../tests/support/any-log.ts";
import { bundleVisited, type Chart, compartmentCount } from "../chart/chart.ts";
import { plainChart, spreadChart } from "../chart/make-chart.ts";
import { type CardLogEntry, type ChartEntry, isCardEntry, type LogEntry, takenBackBy } from "../log/entry.ts";
import { chartNow, chartTimeline } from "./chart-timeline.ts";
import { foldCard, foldLog, judgeEntry, passedOver } from "./fold-log.ts";
import { applyEntry, type CardState, FRESH_CARD } from "./placement.ts";
import { rechartPlace } from "./rechart.ts";

const CARD = "vega:forward";
const NOTHING: ReadonlySet<string> = new Set();

// Identities of one letter sort as the log reads them; the plain chart visits compartment 2 on odd days.
const plain = plainChart(7);
const base = (id: string) => ({ id, box: "box", at: 0 });
const asked = (id: string, change: Partial<CardLogEntry> & { day: number; sitting: string }): CardLogEntry =>
  ({ ...base(id), kind: "outcome", card: CARD, answer: "recalled", pass: "visit", ...change }) as CardLogEntry;
const introduced = asked("b", { pass: "introduction", day: 1, sitting: "a" });
const changed = (id: string, chart: Chart, day: number): ChartEntry => ({ ...base(id), kind: "chart", chart, day });
const taken = (id: string, entry: string): LogEntry => ({ ...base(id), kind: "take-back", entry });
const placeIn = (log: readonly LogEntry[]) => foldLog([{ ...setUpWith(plain), id: "0" }, ...log]).get(CARD)?.place;

/** Charts of which the second has a compartment 2 that is visited on even days. */
const even = spreadChart([1, 2]);
const shifted: Chart = { compartments: even.compartments.map((one, k) => (k === 1 ? { ...one, offset: 0 } : one)) };

describe("an entry that was taken back", () => {
  it("leaves the card as if it had not happened, even if the news of it comes first", () => {
    const slip = asked("c", { answer: "missed", day: 2, sitting: "bb" });
    expect(placeIn([taken("d", "c"), introduced, slip])).toEqual(placeIn([introduced]));
  });
});

describe("an entry that is passed over", () => {
  const charts = chartTimeline([{ ...setUpWith(plain), id: "0" }], NOTHING);
  const early = asked("c", { day: 2, sitting: "bb" });
  const late = asked("e", { day: 2, sitting: "dd" });

  it("is an answer that the one before it has made untimely, until that is taken back", () => {
    expect(passedOver(charts, [late, introduced, early], NOTHING)).toEqual(new Set(["e"]));
    expect(passedOver(charts, [late, introduced, early], new Set(["c"]))).toEqual(NOTHING);
    expect(passedOver(charts, [late, introduced, early], new Set(["e"]))).toEqual(NOTHING);
  });

  it("leaves the place as it would be without it, in any log", () => {
    fc.assert(
      fc.property(anyLog, (entries) => {
        const log = [setUpWith(plain), ...entries];
        const takenBack = takenBackBy(log);
        const timeline = chartTimeline(log, takenBack);
        const cards = new Set(entries.flatMap((entry) => (isCardEntry(entry) ? [entry.card] : [])));
        for (const card of cards) {
          const own = entries.filter((entry): entry is CardLogEntry => isCardEntry(entry) && entry.card === card);
          const over = passedOver(timeline, own, takenBack);
          const rest = own.filter(({ id }) => !over.has(id));
          expect({ ...foldCard(timeline, rest, takenBack), lastEntry: null }).toEqual({
            ...foldCard(timeline, own, takenBack),
            lastEntry: null,
          });
        }
      }),
    );
  });
});

describe("a change of chart", () => {
  const up = asked("c", { day: 2, sitting: "bb" });

  it("moves a card that lies in a compartment, and the next answers go by the new chart", () => {
    expect(placeIn([introduced, up])).toEqual({ kind: "compartment", compartment: 2, bundle: 1, due: 3 });
    const log = [introduced, up, changed("d", shifted, 3)];
    expect(placeIn(log)).toEqual({ kind: "compartment", compartment: 2, bundle: 1, due: 4 });
    expect(placeIn([...log, asked("f", { day: 4, sitting: "e" })])).toEqual({ kind: "kept" });
  });

  it("moves no card that had not been introduced by then", () => {
    const late = { ...introduced, id: "e", sitting: "dd" } as CardLogEntry;
    expect(placeIn([changed("d", shifted, 1), late])).toEqual(placeIn([introduced]));
  });

  it("counts as if it had not been, once it is taken back", () => {
    expect(placeIn([introduced, up, changed("d", shifted, 3), taken("e", "d")])).toEqual(placeIn([introduced, up]));
  });

  it("follows another: cards go through both, in the order of the log", () => {
    const both = [introduced, up, changed("d", shifted, 3), changed("e", plain, 3)];
    expect(placeIn(both)).toEqual({ kind: "compartment", compartment: 2, bundle: 1, due: 3 });
    expect(placeIn(both.toReversed())).toEqual(placeIn(both));
  });

  it("does not touch what is answered in a sitting that was begun before, however late", () => {
    const change = changed("d", shifted, 3);
    const late = { ...up, id: "e" } as CardLogEntry;
    expect(placeIn([introduced, change, late])).toEqual(placeIn([introduced, up, change]));
  });

  it("is not brought forward by an entry that does not count", () => {
    const change = changed("d", shifted, 3);
    const nowhere: CardLogEntry = { ...base("e"), kind: "move", card: CARD, day: 3, to: 9 };
    const late = { ...up, id: "f" } as CardLogEntry;
    expect(placeIn([introduced, change, nowhere, late])).toEqual(placeIn([introduced, up, change]));
  });

  it("is not undone by such an answer to a card that something has happened to since", () => {
    const moved: CardLogEntry = { ...base("e"), kind: "move", card: CARD, day: 3, to: 2 };
    const late = asked("f", { answer: "missed", day: 3, sitting: "cc" });
    const charts = chartTimeline([setUpWith(plain), changed("d", shifted, 3)], NOTHING);
    expect(judgeEntry(charts, [introduced, moved], NOTHING, late).ignored).toBe("not-due");
    expect(judgeEntry(charts, [introduced], NOTHING, late).ignored).toBeNull();
  });
});

/** Whether no sitting was under way at any change of chart: entries of a log can then be applied as they come. */
const betweenSittings = (log: readonly LogEntry[]): boolean => {
  const changes = log.filter((entry) => entry.kind === "chart");
  return log.every((entry) => !("sitting" in entry) || changes.every((c) => entry.id < c.id || entry.sitting > c.id));
};

/** The log without what was taken back and the taking back. */
const standing = (log: readonly LogEntry[]): readonly LogEntry[] => {
  const gone = takenBackBy(log);
  return log.filter((entry) => entry.kind !== "take-back" && !gone.has(entry.id));
};

describe("replaying any log", () => {
  it("gives one placement in whatever order, and however often, its entries are delivered", () => {
    fc.assert(
      fc.property(
        shortChart,
        anyLog.chain((log) => fc.tuple(fc.constant(log), delivered(log))),
        (first, [log, arrived]) => {
          const inOrder = foldLog([setUpWith(first), ...log]);
          const replayed = foldLog([...arrived, setUpWith(first)]);
          expect(new Map([...replayed].sort())).toEqual(new Map([...inOrder].sort()));
        },
      ),
    );
  });

  it("gives the same as applying each entry as it comes, where no chart was changed in the middle of a sitting", () => {
    let changes = 0;
    fc.assert(
      fc.property(shortChart, anyLog.map(standing).filter(betweenSittings), (first, log) => {
        const states = new Map<string, CardState>();
        let chart = first;
        for (const entry of log) {
          if (isCardEntry(entry)) {
            states.set(entry.card, applyEntry(chart, states.get(entry.card) ?? FRESH_CARD, entry).state);
          }
          if (entry.kind !== "chart") continue;
          changes++;
          for (const [card, state] of states) {
            states.set(card, { ...state, place: rechartPlace(chart, entry.chart, entry.day, state.place) });
          }
          chart = entry.chart;
        }
        expect(foldLog([setUpWith(first), ...log])).toEqual(states);
      }),
    );
    expect(changes).toBeGreaterThan(0);
  });

  it("gives the same as if what was taken back had never been sent", () => {
    fc.assert(
      fc.property(shortChart, anyLog, (first, log) => {
        const whole = foldLog([setUpWith(first), ...log]);
        const rest = foldLog([setUpWith(first), ...standing(log)]);
        for (const [card, state] of whole) expect(state).toEqual(rest.get(card) ?? FRESH_CARD);
      }),
    );
  });

  it("puts each card in a place that the box has, due when its bundle is visited", () => {
    fc.assert(
      fc.property(shortChart, anyLog, (first, log) => {
        const whole = [setUpWith(first), ...log];
        const chart = chartNow(chartTimeline(whole, takenBackBy(whole)));
        for (const { place } of foldLog(whole).values()) {
          const inside = place.kind === "withdrawn" ? place.from : place;
          if (inside.kind !== "compartment") continue;
          expect(inside.compartment).toBeLessThanOrEqual(compartmentCount(chart));
          expect(bundleVisited(chart, inside.compartment, inside.due)).toBe(inside.bundle);
        }
      }),
    );
  });

  it("never lets one sitting count two visits of a card", () => {
    fc.assert(
      fc.property(shortChart, anyLog, (first, log) => {
        const charts = chartTimeline([setUpWith(first), ...log], takenBackBy(log));
        const own = standing(log).filter(isCardEntry);
        const asked = new Set<string>();
        own.forEach((entry, i) => {
          if (entry.kind !== "outcome" || entry.pass !== "visit") return;
          const earlier = own.slice(0, i).filter(({ card }) => card === entry.card);
          if (judgeEntry(charts, earlier, NOTHING, entry).ignored !== null) return;
          const key = `${entry.card} ${entry.sitting}`;
          expect(asked.has(key)).toBe(false);
          asked.add(key);
        });
      }),
    );
  });

  it("passes over entries that do not count as if they had not been sent", () => {
    let passedOver = 0;
    fc.assert(
      fc.property(shortChart, anyLog.map(standing), (first, log) => {
        const charts = chartTimeline([setUpWith(first), ...log], NOTHING);
        const own = log.filter((entry): entry is CardLogEntry => isCardEntry(entry) && entry.card === CARD);
        const counting: CardLogEntry[] = [];
        for (const entry of own) {
          if (judgeEntry(charts, counting, NOTHING, entry).ignored === null) counting.push(entry);
          else passedOver++;
        }
        const { lastEntry } = foldCard(charts, own, NOTHING);
        expect(foldCard(charts, own, NOTHING)).toEqual({ ...foldCard(charts, counting, NOTHING), lastEntry });
      }),
    );
    expect(passedOver).toBeGreaterThan(0);
  });
});
