// What is typed and chosen for a chart that is to be designed, and the question that it makes.
import { CHART_LIMITS, type Chart, checkChart, cycleLength, tabCount } from "../../../core/chart/chart.ts";
import { DESIGN_LIMITS } from "../../../core/chart/design-chart.ts";
import { fail, ok, type Result } from "../../../core/result.ts";
import { count } from "../../words.ts";

/** How periods grow: by a factor from compartment to compartment, or as they are typed. */
export type Growth = 2 | 3 | "own";

/** The choices of the form. */
export interface DesignForm {
  readonly growth: Growth;
  /** Compartments where periods grow by a factor. */
  readonly compartments: number;
  /** Periods as typed. */
  readonly typed: string;
  /** Most tabs, before it is brought within what the periods allow. */
  readonly tabs: number;
  /** A tab for every day, whatever `tabs` says. */
  readonly dated: boolean;
}

/** The form as it begins: the periods and the tabs of a chart. */
export function firstForm(chart: Chart): DesignForm {
  const periods = chart.compartments.map(({ period }) => period);
  const grows = (factor: 2 | 3): boolean =>
    periods.length <= mostCompartments(factor) && periods.every((period, k) => period === factor ** k);
  const growth = grows(2) ? 2 : grows(3) ? 3 : "own";
  const compartments = Math.min(periods.length, DESIGN_FORM.compartments);
  return { growth, compartments, typed: periods.join(", "), tabs: tabCount(chart), dated: false };
}

/** Limits of the form. */
export const DESIGN_FORM = { compartments: 12, tabs: 64 } as const;

/** Most compartments whose periods, growing by a factor, come round within what can be designed. */
export function mostCompartments(factor: number): number {
  let most = 1;
  while (most < DESIGN_FORM.compartments && factor ** most <= DESIGN_LIMITS.cycle) most++;
  return most;
}

/** The periods of the form in days; or what is wrong with those typed, and what to do. */
export function formPeriods({ growth, compartments, typed }: DesignForm): Result<readonly number[], string> {
  if (growth !== "own") return ok(Array.from({ length: compartments }, (_, k) => growth ** k));
  const parts = typed.split(/[\s,;]+/).filter((part) => part !== "");
  const odd = parts.find((part) => !/^\d{1,9}$/.test(part));
  if (odd !== undefined) return fail(`“${odd}” is not a whole number of days. Write numbers such as 1, 2, 4, 8.`);
  if (parts.length === 0) return fail("Write the days from visit to visit of each compartment, such as 1, 2, 4, 8.");
  const periods = parts.map(Number);
  const checked = checkChart(bareChart(periods));
  if (!checked.ok) return fail(`${checked.error.charAt(0).toUpperCase()}${checked.error.slice(1)}.`);
  const cycle = cycleLength(checked.value);
  if (cycle <= DESIGN_LIMITS.cycle) return ok(periods);
  return fail(
    `These periods only come round together after ${count(cycle)} days; choose some that do so within ${count(DESIGN_LIMITS.cycle)}, for instance each a multiple of the one before.`,
  );
}

/** A chart of these periods with one bundle each, all visited on the same day: enough to ask about its periods. */
export const bareChart = (periods: readonly number[]): Chart => ({
  compartments: periods.map((period) => ({ period, bundles: 1, offset: 0 })),
});

/** What tabs may be chosen for these periods. */
export interface TabsRange {
  readonly least: number;
  readonly most: number;
  /** A tab for every day of every period; null where that is more than a chart may have. */
  readonly dated: number | null;
}

/** From a tab for each compartment to one for every day, or to as many as the form offers. */
export function tabsRange(periods: readonly number[]): TabsRange {
  const days = periods.reduce((sum, period) => sum + period, 0);
  const least = periods.length;
  const most = Math.max(least, Math.min(DESIGN_FORM.tabs, days));
  return { least, most, dated: days <= CHART_LIMITS.tabs ? days : null };
}

/** The tabs that the form asks for. */
export function formTabs({ tabs, dated }: DesignForm, range: TabsRange): number {
  if (dated && range.dated !== null) return range.dated;
  return Math.min(range.most, Math.max(range.least, tabs));
}
