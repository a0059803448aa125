import { expect, test } from "vitest";
import type { SittingView } from "../../app/views.ts";
import type { OutcomeEntry } from "../../core/log/entry.ts";
import { withUnsent } from "./seated.ts";

const entry = (id: string) => ({ id, box: "box", at: 0 });
const answer = (id: string, card: string): OutcomeEntry => ({
  ...entry(id),
  kind: "outcome",
  card,
  day: 1,
  sitting: "evening",
  pass: "visit",
  answer: "recalled",
  compartment: 1,
  bundle: 1,
  seconds: 4,
});
const view: SittingView = {
  plan: { sitting: "evening", day: 1, piles: [], newCards: [] },
  events: [answer("1", "vega:forward")],
  finished: true,
  compartments: 7,
  lastEntry: "1",
};

test("an answer that waits here counts, and opens a finished sitting again", () => {
  const seen = withUnsent(view, [answer("2", "deneb:forward")]);
  expect(seen.events.map(({ id }) => id)).toEqual(["1", "2"]);
  expect(seen.finished).toBe(false);
});

test("an answer that the server has as well counts once", () => {
  expect(withUnsent(view, [answer("1", "vega:forward")]).events).toHaveLength(1);
});

test("what is being taken back counts no more", () => {
  const seen = withUnsent(view, [{ ...entry("2"), kind: "take-back", entry: "1" }]);
  expect(seen.events).toEqual([]);
  expect(seen.finished).toBe(false);
});

test("answers of another sitting do not matter", () => {
  expect(withUnsent(view, [{ ...answer("2", "deneb:forward"), sitting: "yesterday" }])).toEqual(view);
});
