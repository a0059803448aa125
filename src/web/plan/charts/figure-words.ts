// The figures of a chart in plain sentences.
import { count, counted } from "../../words.ts";
import type { ChartFigures } from "./chart-figures.ts";

/** A share as "27 %"; between two whole per cents below ten, and near a hundred, with a decimal. */
export function percent(share: number): string {
  const hundredths = share * 100;
  const fine = Math.abs(hundredths) < 9.95 && Math.abs(hundredths - Math.round(hundredths)) >= 0.05;
  return `${hundredths.toFixed(fine ? 1 : 0)}\u00a0%`;
}

/** As a share of the mean: below this the worst day is no worse than any other, as far as anybody could tell. */
const EVEN = 0.0005;

/** Whether a peak is no higher than any other day. */
export const isEven = (peakToMean: number): boolean => peakToMean - 1 < EVEN;

/** How far the worst day lies above the mean; in times of the mean where it is more than double. */
export function aboveWords(aboveMean: number): string {
  if (aboveMean < EVEN) return "as on every day";
  return aboveMean > 1 ? `${(1 + aboveMean).toFixed(1)} times the mean` : `${percent(aboveMean)} above the mean`;
}

/** At which pace figures are given; where no new cards are planned, they are for another pace. */
export const paceWords = (planned: number, shown: number): string =>
  planned > 0
    ? `with ${paceNumber(shown)} new ${noun(shown, "card")} on every practice day.`
    : `if there were ${paceNumber(shown)} new cards on every practice day; none are planned.`;

const paceNumber = (pace: number): string => (Number.isInteger(pace) ? count(pace) : pace.toFixed(1));

/** Periods with commas between. */
export const periodWords = (periods: readonly number[]): string => periods.join(", ");

/** A figure and the rest of its sentence. */
export interface FigureLine {
  readonly key: string;
  readonly figure: string;
  readonly words: string;
}

/** Each figure of a chart as the beginning of a sentence. */
export function figureLines(figures: ChartFigures): readonly FigureLine[] {
  const { tabs, mean, peak, aboveMean, longestWait, daysUntilKept, reviewsPerCard, recallAYearOn } = figures;
  return [
    { key: "tabs", figure: count(tabs), words: `${noun(tabs, "tab")} to keep apart` },
    { key: "mean", figure: count(mean), words: `${noun(mean, "card")} asked on the mean day` },
    { key: "peak", figure: count(peak), words: `on the worst day, ${aboveWords(aboveMean)}` },
    {
      key: "wait",
      figure: count(longestWait),
      words: `${noun(longestWait, "day")} at most between two askings of a card`,
    },
    {
      key: "kept",
      figure: count(daysUntilKept),
      words: `${noun(daysUntilKept, "day")} until a card is kept, on average`,
    },
    { key: "reviews", figure: reviewsPerCard.toFixed(1), words: "askings of a card until it is kept" },
    { key: "year", figure: percent(recallAYearOn), words: "of kept cards recalled a year on, as predicted" },
  ];
}

/** The skyline of a chart for those who do not see it. */
export const skylineWords = ({ byDay, cycle, mean }: ChartFigures): string =>
  `From ${count(Math.min(...byDay))} to ${counted(Math.max(...byDay), "card")} a day over a cycle of ${counted(cycle, "day")}, mean ${count(mean)}.`;

const noun = (n: number, one: string): string => (Math.round(n) === 1 ? one : `${one}s`);
