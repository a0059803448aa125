// What can be afforded, in words.
import { counted, fullDate, minuteWords } from "../../words.ts";
import type { TaskAnswer } from "../workers/tasks.ts";

/** "on 95 days in 100". */
export const daysInHundred = (level: number): string => `on ${Math.round(100 * level)} days in 100`;

/** The pace, the busiest day at it, and how sure that is. */
export function affordWords({ each, worst, minutes, within, date }: TaskAnswer<"afford">, level: number): string {
  if (!worst || date === null) return "There is no sitting in the coming year.";
  const day = fullDate(date);
  const reached = `${minuteWords(minutes)} ${daysInHundred(level)}`;
  if (!within) return `The cards in the box ask for more than that without any new ones: on ${day} at most ${reached}.`;
  const pace = each === 0 ? "No new cards." : `${counted(each, "new card")} a day.`;
  return `${pace} The busiest day is then ${day}, at most ${reached}.`;
}
