// What a change of chart would do to a running box: to its cards, and to the load of the coming days.
import type { PlanView } from "../../../app/views.ts";
import { rechartWaiting } from "../../../core/box/rechart.ts";
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import { type BoxDay, bundleVisited, type Chart } from "../../../core/chart/chart.ts";
import { datedDays } from "../../../core/load/dated-days.ts";
import { planLoad } from "../../../core/load/plan-load.ts";
import { type PlanDraft, questionOf } from "../plan-draft.ts";

/** Dates whose load is shown before and after. */
const AHEAD = 60;

/** A date with the cards that are expected to be asked on it. */
export interface LoadOfDate {
  readonly date: LocalDate;
  /** Whether there is practice on it. */
  readonly sits: boolean;
  /** By the chart as it is. */
  readonly before: number;
  /** By the new chart. */
  readonly after: number;
}

/** A change of chart before it is made. */
export interface ChartPreview {
  /** Cards in compartments. */
  readonly cards: number;
  /** Of these, cards that come to lie elsewhere or are due on another day. */
  readonly moved: number;
  /** The coming dates; nothing on rest days. */
  readonly days: readonly LoadOfDate[];
}

/** What would become of the box if it went by the planned chart from the first day that is still ahead. */
export function previewChange(view: PlanView, draft: PlanDraft, own: Chart): ChartPreview {
  const before = loadOf(view, { ...draft, chart: own });
  const after = loadOf(view, draft);
  return {
    cards: view.waiting.reduce((sum, { count }) => sum + count, 0),
    moved: movedCards(view, own, draft.chart, firstDay(view, draft)),
    days: before.map(({ date, kind, reviews }, i) => ({
      date,
      sits: kind === "sitting",
      before: reviews.mean,
      after: after[i]?.reviews.mean ?? 0,
    })),
  };
}

const loadOf = (view: PlanView, draft: PlanDraft) =>
  planLoad({ ...questionOf(view, draft), dates: AHEAD, quantiles: [] });

/** The first box day that is still ahead, looked for as far as the end of a holiday. */
function firstDay(view: PlanView, draft: PlanDraft): BoxDay {
  const { calendar, last, from, dates } = questionOf(view, draft);
  return datedDays({ calendar, last, from, dates }).find(({ day }) => day !== null)?.day ?? 1;
}

function movedCards({ waiting }: PlanView, from: Chart, to: Chart, day: BoxDay): number {
  return waiting.reduce((sum, cards) => {
    const { compartment, due, count } = cards;
    const [moved] = rechartWaiting(from, to, day, [cards]);
    const stays =
      moved?.compartment === compartment &&
      moved.due === due &&
      bundleVisited(from, compartment, due) === bundleVisited(to, compartment, due);
    return stays ? sum : sum + count;
  }, 0);
}

/** The heaviest of some dates, by the chart as it is or by the new one; null where there are none. */
export function heaviest(days: readonly LoadOfDate[], when: "before" | "after"): LoadOfDate | null {
  return days.reduce<LoadOfDate | null>((worst, one) => (worst && worst[when] >= one[when] ? worst : one), null);
}

/** Cards asked on the mean practice day; 0 if there is none. */
export function meanLoad(days: readonly LoadOfDate[], when: "before" | "after"): number {
  const practised = days.filter(({ sits }) => sits);
  return practised.reduce((sum, day) => sum + day[when], 0) / Math.max(1, practised.length);
}
