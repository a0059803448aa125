// A change of chart in plain sentences.
import { count, counted, shortDate } from "../../words.ts";
import { type ChartPreview, heaviest, type LoadOfDate } from "./chart-change.ts";
import type { TabChange } from "./tab-change.ts";

/** What becomes of the cards. */
export function changeWords({ cards, moved }: ChartPreview): string {
  if (cards === 0) return "The box has no cards in its compartments yet, so none has to move.";
  const kept = cards === 1 ? "The box keeps its one card" : `The box keeps all of its ${counted(cards, "card")}`;
  if (moved === 0) return `${kept}, and ${cards === 1 ? "it" : "each"} stays where it is.`;
  const own = moved === 1 ? "its own day" : "their own day";
  const who = cards === 1 ? "It moves" : `${counted(moved, "card")} ${moved === 1 ? "moves" : "move"}`;
  return `${kept}. ${who} to the bundle whose next visit is nearest to ${own}.`;
}

/** The load of the coming dates before and after. */
export function loadWords(days: readonly LoadOfDate[]): string {
  const before = heaviest(days, "before");
  const after = heaviest(days, "after");
  if (!before || !after) return "";
  const sum = (when: "before" | "after"): string => count(days.reduce((all, day) => all + day[when], 0));
  return (
    `In the coming ${days.length} days the heaviest asks ${counted(before.before, "card")} as it is ` +
    `(${shortDate(before.date)}) and ${counted(after.after, "card")} with the new chart (${shortDate(after.date)}). ` +
    `In all ${sum("before")} and ${sum("after")}.`
  );
}

/** What is to be done to a paper box. */
export function tabWords({ write, drop }: TabChange): string {
  const tabs = [
    ...(write.length > 0 ? [`write these tabs: ${write.join(", ")}`] : []),
    ...(drop.length > 0 ? [`take these out: ${drop.join(", ")}`] : []),
  ];
  const cards = "put each card where the Box page shows it, and write the new days of the chart on your calendar";
  if (tabs.length === 0) return `On paper the tabs stay as they are; ${cards}.`;
  return `On paper ${tabs.join("; ")}; ${cards}.`;
}
