// The fold of the log against a box of paper that is practised at a table, card by card.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart, shortChart } from "../../../tests/support/any-chart.ts";
import { setUpWith } from "../../../tests/support/any-log.ts";
import { createPaperBox, type Picked } from "../../../tests/support/paper-box.ts";
import type { Chart } from "../chart/chart.ts";
import type { CardLogEntry, OutcomeEntry } from "../log/entry.ts";
import { createEntryId } from "../log/entry-id.ts";
import { uniform } from "../random.ts";
import { foldLog } from "./fold-log.ts";
import { applyEntry, type CardState, FRESH_CARD, type Place } from "./placement.ts";

const STARS = ["Altair", "Antares", "Arcturus", "Capella", "Deneb", "Polaris", "Regulus", "Rigel", "Spica", "Vega"];

const nameOf = (place: Place): string =>
  place.kind === "compartment" ? `${place.compartment}/${place.bundle}` : place.kind;

interface Practice {
  readonly chart: Chart;
  readonly days: number;
  readonly newPerDay: number;
  readonly recall: number;
  readonly seed: string;
}

const practiceOn = (charts: fc.Arbitrary<Chart>): fc.Arbitrary<Practice> =>
  fc.record({
    chart: charts,
    days: fc.integer({ min: 1, max: 90 }),
    newPerDay: fc.integer({ min: 1, max: 3 }),
    recall: fc.constantFrom(0.5, 0.9, 1),
    seed: fc.string({ maxLength: 4 }),
  });

/** Practises every day on paper and in the log; compares after each. */
function practise({ chart, days, newPerDay, recall, seed }: Practice, compare: (day: Day) => void): void {
  const paper = createPaperBox(chart, STARS);
  const entries: CardLogEntry[] = [];
  const states = new Map<string, CardState>(STARS.map((star) => [star, FRESH_CARD]));
  let made = 0;
  const record = (card: string, day: number, own: Pick<OutcomeEntry, "pass" | "answer" | "compartment" | "bundle">) => {
    const id = createEntryId(++made, new Uint8Array(10));
    const sitting = `sitting of day ${day}`;
    const entry: OutcomeEntry = { id, box: "box", at: 0, card, day, kind: "outcome", sitting, seconds: null, ...own };
    const applied = applyEntry(chart, states.get(card) ?? FRESH_CARD, entry);
    expect(applied.ignored).toBeNull();
    states.set(card, applied.state);
    entries.push(entry);
  };
  for (let day = 1; day <= days; day++) {
    const due = [...states].flatMap(([card, { place }]) =>
      place.kind === "compartment" && place.due <= day ? [`${card} ${nameOf(place)}`] : [],
    );
    const picked: string[] = [];
    paper.sit(day, newPerDay, ({ card, compartment, bundle }: Picked) => {
      const recalled = uniform(seed, `${card} ${day}`) < recall;
      picked.push(`${card} ${compartment}/${bundle}`);
      record(card, day, { pass: "visit", answer: recalled ? "recalled" : "missed", compartment, bundle });
      return recalled;
    });
    for (const [card, name] of paper.where()) {
      if (name !== "stock" && states.get(card)?.place.kind === "stock") {
        record(card, day, { pass: "introduction", answer: "recalled", compartment: 0, bundle: 0 });
      }
    }
    compare({ picked, due, paper: paper.where(), states, entries });
  }
}

interface Day {
  readonly picked: readonly string[];
  readonly due: readonly string[];
  readonly paper: ReadonlyMap<string, string>;
  readonly states: ReadonlyMap<string, CardState>;
  readonly entries: readonly CardLogEntry[];
}

describe.each([
  ["a short chart", shortChart],
  ["any chart", anyChart],
])("a box of paper practised every day by %s", (_name, charts) => {
  it("takes up exactly the cards that are due by the log, from the same piles", () => {
    fc.assert(
      fc.property(practiceOn(charts), (practice) => {
        practise(practice, ({ picked, due }) => expect([...picked].sort()).toEqual([...due].sort()));
      }),
    );
  });

  it("holds every card in the one place that the log gives it, and no card is lost", () => {
    fc.assert(
      fc.property(practiceOn(charts), (practice) => {
        practise(practice, ({ paper, states }) => {
          expect(new Map([...paper].sort())).toEqual(
            new Map([...states].map(([card, { place }]) => [card, nameOf(place)] as const).sort()),
          );
          expect(paper.size).toBe(STARS.length);
        });
      }),
    );
  });

  it("agrees with the replay of the whole log at the end", () => {
    fc.assert(
      fc.property(practiceOn(charts), (practice) => {
        let last: Day | undefined;
        practise(practice, (day) => {
          last = day;
        });
        const replayed = foldLog([setUpWith(practice.chart), ...(last?.entries ?? [])]);
        for (const [card, place] of last?.paper ?? []) {
          expect(nameOf((replayed.get(card) ?? FRESH_CARD).place)).toBe(place);
        }
      }),
    );
  });
});
