// A Plan page to look at: a volunteer guide's box of seven compartments after some weeks.
import type { PlanView } from "../../src/app/views.ts";
import type { Calendar } from "../../src/core/calendar/calendar.ts";
import { arrival, type Chart, compartmentCount } from "../../src/core/chart/chart.ts";
import { LEVELLED_CHART } from "../../src/core/chart/make-chart.ts";
import { DEFAULT_PACE } from "../../src/core/load/minutes.ts";

const CALENDAR: Calendar = {
  timeZone: "Europe/Lisbon",
  rollOverHour: 4,
  restWeekdays: [],
  restDates: [],
  policy: "chart-waits",
  anchor: { date: "2026-10-12", day: 1 },
};

/** What everybody sees before a box is set up. */
export const EMPTY_PLAN: PlanView = {
  box: null,
  calendar: CALENDAR,
  date: "2026-11-25",
  from: "2026-11-25",
  last: null,
  waiting: [],
  visits: [],
  pace: DEFAULT_PACE,
  paceMeasured: false,
  stock: 0,
  chartChange: null,
};

/**
 * A box by `chart` that was last sat on box day 44, the day before today, with five cards that arrived on it in each
 * compartment.
 */
export function planOfBox(chart: Chart = LEVELLED_CHART, change: Partial<PlanView> = {}): PlanView {
  const compartments = Array.from({ length: compartmentCount(chart) }, (_, i) => i + 1);
  return {
    ...EMPTY_PLAN,
    box: { id: "box", chart, calendar: CALENDAR, newPerDay: 10 },
    last: { date: "2026-11-24", day: 44 },
    waiting: compartments.map((k) => ({ compartment: k, due: arrival(chart, k, 44).due, count: 5 })),
    stock: 300,
    ...change,
  };
}
