// What the designer found, and how sure it is, in plain sentences.
import type { Design } from "../../../core/chart/design-chart.ts";
import { count, counted } from "../../words.ts";
import { aboveWords, isEven, percent } from "./figure-words.ts";

/** What came out for at most `allowed` tabs at a pace of new cards a day: first what, then how good it is at best. */
export function designWords(design: Design, allowed: number, pace: number): readonly [string, string] {
  return [foundWords(design, allowed, pace), proofWords(design, allowed, pace)];
}

function foundWords(design: Design, allowed: number, pace: number): string {
  const { tabs, peak, peakToMean } = design;
  const used = tabs < allowed ? `${count(tabs)} of the ${counted(allowed, "tab")} allowed` : counted(tabs, "tab");
  const worst = counted(peak * pace, "card");
  return isEven(peakToMean)
    ? `${used} make every day alike: ${worst}.`
    : `${used} ${tabs === 1 ? "keeps" : "keep"} the worst day at ${worst}, ${aboveWords(peakToMean - 1)}.`;
}

function proofWords(design: Design, allowed: number, pace: number): string {
  const { exact, lowerBound, peak, peakToMean, evaluations } = design;
  if (isEven(peakToMean)) return "No chart does better: no worst day can lie below the mean.";
  if (exact) {
    return `No chart with these periods and at most ${counted(allowed, "tab")} does better: every one that could was tried.`;
  }
  return (
    `The search was heuristic: ${counted(evaluations, "chart")} were tried, not all. The best possible worst day lies ` +
    `between ${count(lowerBound * pace)} cards (the mean, below which none can be) and ${count(peak * pace)} (this one), ` +
    `so this one is at most ${percent(peakToMean - 1)} above the best.`
  );
}
