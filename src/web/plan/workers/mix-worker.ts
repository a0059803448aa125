// The worker that mixes what is not yet known of recall into a load, set after set. Whoever wants it no longer ends it.
import { datedDays } from "../../../core/load/dated-days.ts";
import type { ExactDay } from "../../../core/load/exact-load.ts";
import { minutesFor, type Pace } from "../../../core/load/minutes.ts";
import { ENOUGH_SETS, mixLoad } from "../../../core/load/mixed-load.ts";
import { onDates, type PlanDay, type PlanQuestion, toBoxDays } from "../../../core/load/plan-load.ts";
import type { Beta } from "../../../core/recall/beta.ts";

/** What a plot shows. */
export type LoadUnit = "cards" | "minutes";

/** What is to be mixed. The bands of minutes take five times as long, so they are mixed only where they are shown. */
export interface MixRequest {
  readonly question: PlanQuestion;
  readonly posterior: readonly Beta[];
  readonly unit: LoadUnit;
}

/** The load so far. Minutes that were not mixed have their mean, and neither spread (`NaN`) nor quantiles (none). */
export interface MixReply {
  readonly days: readonly PlanDay[];
  /** Sets of chances mixed so far. */
  readonly sets: number;
}

/** Sets after which a mixture is shown for the first time, and then at each doubling. */
const FIRST_SETS = 16;

addEventListener("message", ({ data }: MessageEvent<MixRequest>) => {
  const { question, posterior, unit } = data;
  const dates = datedDays(question);
  const { pace, ...cards } = toBoxDays(question, dates);
  const mixture = mixLoad(unit === "minutes" ? { ...cards, pace: question.pace } : cards, posterior);
  let show = FIRST_SETS;
  const mixOne = (): void => {
    mixture.add();
    const sets = mixture.sets();
    if (sets === show) {
      const load = mixture.load().map((day) => withMinutes(day, question.pace));
      postMessage({ days: onDates(dates, load, question.quantiles.length), sets } satisfies MixReply);
      show *= 2;
    }
    // A worker that never pauses goes on for seconds after it was ended, and holds up whoever works next.
    if (sets < ENOUGH_SETS) setTimeout(mixOne);
  };
  mixOne();
});

/** Mean minutes follow from mean cards; how they spread does not. */
function withMinutes(day: ExactDay, pace: Pace): ExactDay {
  if (day.minutes) return day;
  const mean = minutesFor(pace, { ...day, reviews: day.reviews.mean });
  return { ...day, minutes: { mean, sd: Number.NaN, quantiles: [] } };
}
