// A plain sentence for every number of the year's load.
import type { PlanView } from "../../../app/views.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { about, count, counted, fullDate, minuteWords, yearDate } from "../../words.ts";
import type { LoadUnit } from "../workers/mix-worker.ts";
import { spreadIn, sumUp, worstAt } from "./year-figures.ts";

/** "about 276 cards and 10 new ones, 41 minutes". */
export function workWords(day: PlanDay): string {
  const { reviews, minutes, newCards } = day;
  const fresh = newCards > 0 ? ` and ${counted(newCards, "new one")}` : "";
  return `about ${counted(reviews.mean, "card")}${fresh}, ${minuteWords(minutes.mean)}`;
}

/** "The worst day is Wednesday 14 July 2027: about 276 cards and 10 new ones, 41 minutes." */
export function worstWords(days: readonly PlanDay[], unit: LoadUnit): string {
  const worst = days[worstAt(days, unit)];
  if (!worst || worst.minutes.mean === 0) return "There is nothing to do in the coming year.";
  return `The worst day is ${fullDate(worst.date)}: ${workWords(worst)}.`;
}

/** "A sitting has about 210 cards and takes 32 minutes; on most days it has 190 to 235." */
export function meanWords(days: readonly PlanDay[]): string {
  const { sittings, cards, minutes, most } = sumUp(days);
  if (sittings === 0 || minutes === 0) return "";
  const [from, to] = most;
  const span = count(from) === count(to) ? "" : `; on most days it has ${count(from)} to ${count(to)}`;
  return `A sitting has about ${counted(cards, "card")} and takes ${about(minutes)}${span}.`;
}

/** One day in full: what is due, how it may turn out, and how long it takes. */
export function dayWords(day: PlanDay, unit: LoadUnit): string {
  const date = fullDate(day.date);
  if (day.kind === "rest") return `${date}: a rest day.`;
  if (day.kind === "missed") return `${date}: missed, nothing is done.`;
  if (day.minutes.mean === 0) return `${date}: nothing is due.`;
  return `${date}: ${workWords(day)}${bandWords(day, unit)}.`;
}

/** "; nine times in ten 255 to 297 cards". */
function bandWords(day: PlanDay, unit: LoadUnit): string {
  const [low, high] = spreadIn(day, unit).quantiles;
  if (low === undefined || high === undefined || count(low) === count(high)) return "";
  return `; nine times in ten ${count(low)} to ${count(high)} ${unit}`;
}

/** How a load compares with the one that was pinned, sitting by sitting. */
export function comparedWords(pinned: readonly PlanDay[], days: readonly PlanDay[], unit: LoadUnit): string {
  const [then, now] = [sumUp(pinned), sumUp(days)];
  const more = unit === "cards" ? now.cards - then.cards : now.minutes - then.minutes;
  if (Math.abs(more) < 0.5) return "On average a sitting costs as much as in the pinned plan.";
  const size = unit === "cards" ? counted(Math.abs(more), "card") : minuteWords(Math.abs(more));
  const [has, up, down] = unit === "cards" ? ["has", "more", "fewer"] : ["takes", "longer", "less"];
  return `On average a sitting ${has} about ${size} ${more > 0 ? up : down} than in the pinned plan.`;
}

/** Which of the two bands is shown: with so many sets of chances of recall mixed in, or none. */
export const bandMeaning = (sets: number): string =>
  sets > 0
    ? "Nine days in ten lie within the band. It shows chance, and what is not yet known about your recall."
    : "Nine days in ten lie within the band. It shows chance alone, as if recall were known exactly.";

/** What the minutes are reckoned with: "Minutes count 8 seconds for a card recalled, …". */
export function paceWords({ pace, paceMeasured }: Pick<PlanView, "pace" | "paceMeasured">): string {
  const seconds = [pace.recalled, pace.missed, pace.fresh].map((one) => count(one));
  const source = paceMeasured
    ? "as your own sittings usually take"
    : "as is common, until your own sittings are measured";
  return `Minutes count ${seconds[0]} seconds for a card recalled, ${seconds[1]} for one missed and asked again, ${seconds[2]} for a new one: ${source}.`;
}

/** The first and last date of a year. */
export const spanWords = (days: readonly PlanDay[]): string =>
  `${yearDate(days[0]?.date ?? "1970-01-01")} to ${yearDate(days.at(-1)?.date ?? "1970-01-01")}`;
