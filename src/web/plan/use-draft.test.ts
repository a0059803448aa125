import { expect, test } from "vitest";
import { LEVELLED_CHART, plainChart } from "../../core/chart/make-chart.ts";
import type { PlanDraft } from "./plan-draft.ts";
import { differences } from "./use-draft.ts";

const DRAFT: PlanDraft = {
  chart: LEVELLED_CHART,
  schedule: { kind: "steady", each: 10 },
  recall: null,
  restWeekdays: [7],
  restDates: [],
  policy: "chart-waits",
  missed: [],
  stockEnds: false,
};

test("two plans differ in the parts that say something else, not in those that are written anew", () => {
  const same = { ...DRAFT, schedule: { ...DRAFT.schedule }, restWeekdays: [7] };
  expect(differences(DRAFT, same)).toEqual(new Set());
  const other: PlanDraft = {
    ...DRAFT,
    chart: plainChart(7),
    recall: 0.9,
    restDates: [{ from: "2026-12-24", to: "2026-12-26" }],
  };
  expect(differences(DRAFT, other)).toEqual(new Set(["chart", "recall", "restDates"]));
});
