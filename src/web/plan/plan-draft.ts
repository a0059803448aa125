// What is being planned on the Plan page: nothing of it touches the box until it is saved.
import type { PlanView } from "../../app/views.ts";
import { changeCalendar, type DateRange, type MissedDayPolicy } from "../../core/calendar/calendar.ts";
import type { LocalDate } from "../../core/calendar/local-date.ts";
import { type Chart, compartmentCount } from "../../core/chart/chart.ts";
import { LEVELLED_CHART } from "../../core/chart/make-chart.ts";
import type { NewCardSchedule } from "../../core/load/new-cards.ts";
import { boxByChart, visitsByChart } from "../../core/load/plan-by-chart.ts";
import type { PlanQuestion } from "../../core/load/plan-load.ts";
import { type Beta, betaMean } from "../../core/recall/beta.ts";
import { recallPosterior } from "../../core/recall/estimate.ts";

/** Levels of the bands: nine days in ten lie between them. */
export const LEVELS = [0.05, 0.95] as const;

/** The same levels of a normal distribution, in standard deviations from its mean (tables). */
export const REACHES = [-1.644854, 1.644854] as const;

/** Dates that the page looks ahead: a year. */
export const YEAR = 365;

/**
 * Chance of recall in every compartment, or in compartment 1, 2 …, of which the last holds for all beyond; null: what
 * the box has measured, uncertain as that is.
 */
export type PlannedRecall = number | readonly number[] | null;

/** The chance of recall that is planned in compartment k, from 1 on. */
export const recallIn = (planned: number | readonly number[], k: number): number =>
  typeof planned === "number" ? planned : (planned[k - 1] ?? planned.at(-1) ?? 0);

/** A plan that is being made. */
export interface PlanDraft {
  readonly chart: Chart;
  readonly schedule: NewCardSchedule;
  readonly recall: PlannedRecall;
  readonly restWeekdays: readonly number[];
  readonly restDates: readonly DateRange[];
  readonly policy: MissedDayPolicy;
  /** Dates that will be missed though they are no rest days. */
  readonly missed: readonly LocalDate[];
  /** Whether new cards end with the stock, or more will be written in time. */
  readonly stockEnds: boolean;
}

/** The plan as it stands: the box's own chart, pace and rest days. */
export function draftOf({ box, calendar }: PlanView): PlanDraft {
  return {
    chart: box?.chart ?? LEVELLED_CHART,
    schedule: { kind: "steady", each: box?.newPerDay ?? 10 },
    recall: box ? null : 0.9,
    restWeekdays: calendar.restWeekdays,
    restDates: calendar.restDates,
    policy: calendar.policy,
    missed: [],
    stockEnds: false,
  };
}

/** What is known of recall in the compartments of the draft's chart; null where the draft says the recall itself. */
export const posteriorOf = (
  { box, visits }: Pick<PlanView, "box" | "visits">,
  { chart, recall }: Pick<PlanDraft, "chart" | "recall">,
): readonly Beta[] | null =>
  recall === null
    ? recallPosterior(box ? visitsByChart(box.chart, chart, visits) : visits, compartmentCount(chart))
    : null;

/** The plan as a question about the coming year. */
export function questionOf(view: PlanView, draft: PlanDraft): PlanQuestion {
  const { chart, schedule, recall, restWeekdays, restDates, policy, missed, stockEnds } = draft;
  const posterior = posteriorOf(view, draft);
  const calendar = changeCalendar(view.calendar, { restWeekdays, restDates, policy }, view.last);
  const { waiting, last, from } = view;
  return {
    ...boxByChart({ chart: view.box?.chart ?? chart, waiting, calendar, last, from }, chart),
    schedule,
    recall: posterior?.map(betaMean) ?? chart.compartments.map((_, i) => recallIn(recall ?? 0, i + 1)),
    dates: YEAR,
    missed,
    stock: stockEnds ? view.stock : null,
    pace: view.pace,
    quantiles: LEVELS,
  };
}
