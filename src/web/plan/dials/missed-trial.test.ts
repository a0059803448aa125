import { expect, test } from "vitest";
import { LEVELLED_CHART } from "../../../core/chart/make-chart.ts";
import { type PlanQuestion, planLoad } from "../../../core/load/plan-load.ts";
import { comingBack, datesFrom, MOST_MISSED } from "./missed-trial.ts";

const QUESTION: PlanQuestion = {
  chart: LEVELLED_CHART,
  recall: LEVELLED_CHART.compartments.map(() => 0.9),
  waiting: [
    { compartment: 3, due: 4, count: 30 },
    { compartment: 2, due: 6, count: 25 },
  ],
  calendar: {
    timeZone: "Europe/Lisbon",
    rollOverHour: 4,
    restWeekdays: [],
    restDates: [],
    policy: "chart-waits",
    anchor: { date: "2026-11-25", day: 1 },
  },
  last: null,
  from: "2026-11-25",
  dates: 60,
  missed: datesFrom("2026-11-27", "2026-12-04"),
  schedule: { kind: "steady", each: 10 },
  stock: null,
  pace: { recalled: 6, missed: 22, fresh: 14 },
  quantiles: [],
};

test("dates run from one to the other, and no further than can be missed", () => {
  expect(datesFrom("2026-12-30", "2027-01-01")).toEqual(["2026-12-30", "2026-12-31", "2027-01-01"]);
  expect(datesFrom("2026-12-30", "2026-12-29")).toEqual([]);
  expect(datesFrom("2026-12-30", "")).toEqual([]);
  expect(datesFrom("2026-01-01", "2026-12-31")).toHaveLength(MOST_MISSED);
});

test("a chart that goes on asks more on the first day back than one that waits", () => {
  const waits = comingBack(planLoad(QUESTION));
  const calendar = { ...QUESTION.calendar, policy: "chart-goes-on" } as const;
  const goesOn = comingBack(planLoad({ ...QUESTION, calendar }));
  expect(waits.first?.date).toBe("2026-12-05");
  expect(goesOn.first?.date).toBe("2026-12-05");
  expect(goesOn.first?.reviews.mean).toBeGreaterThan((waits.first?.reviews.mean ?? 0) + 20);
  expect(goesOn.ahead).toHaveLength(14);
  expect(goesOn.ahead[0]).toBe(goesOn.first?.reviews.mean);
});

test("the worst day lies within four weeks of coming back", () => {
  const { worst } = comingBack(planLoad(QUESTION));
  expect(worst && worst.date >= "2026-12-05" && worst.date < "2027-01-02").toBe(true);
});

test("who never comes back has no first day", () => {
  const all = planLoad({ ...QUESTION, dates: 5, missed: datesFrom("2026-11-25", "2026-11-29") });
  expect(comingBack(all)).toEqual({ first: null, worst: null, ahead: [] });
});
