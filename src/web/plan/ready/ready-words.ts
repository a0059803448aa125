// A plan for a date, in words.
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import type { DeadlineChoice, DeadlinePlan } from "../../../core/load/deadline.ts";
import { count, counted, fullDate, yearDate } from "../../words.ts";

/** What was asked for. */
export interface Wish {
  readonly by: LocalDate;
  readonly cards: number;
}

/** "7 new cards a day, the last on Monday 28 December". */
export const paceWords = ({ each, last }: DeadlineChoice): string =>
  last === null ? "no new cards" : `${counted(each, "new card")} a day, the last on ${fullDate(last)}`;

/** "about 189 of the 200 are recalled, nine times in ten 183 to 194". */
export function recalledWords({ introduced, recalled }: DeadlineChoice): string {
  const [low, high] = recalled.quantiles;
  const range = low === undefined || high === undefined ? "" : `, nine times in ten ${count(low)} to ${count(high)}`;
  return `about ${count(recalled.mean)} of the ${count(introduced)} are recalled${range}`;
}

/** The answer in sentences: the pace, what it leads to, and what does not fit. */
export function readyWords(plan: DeadlinePlan, { by, cards }: Wish): readonly string[] {
  const { best, sittings, within } = plan;
  if (sittings === 0) return [`There is no sitting before ${yearDate(by)}.`];
  if (!within) return ["The cards in the box ask for more than that time without any new ones."];
  if (best.introduced === 0) return ["There is no room for new cards within that time."];
  const said = [`${capitalPace(best)}. On ${yearDate(by)} ${recalledWords(best)}.`];
  if (best.introduced < cards)
    said.push(`There is room for ${count(best.introduced)} of the ${counted(cards, "card")} before the date.`);
  return said;
}

const capitalPace = (choice: DeadlineChoice): string => paceWords(choice).replace(/^no/, "No");

/** The gentler choice where it is another one; null if the best is already the slowest. */
export function gentleWords({ best, gentle, within }: DeadlinePlan): string | null {
  if (!within || gentle.each >= best.each || gentle.last === null) return null;
  return `Gentler: ${paceWords(gentle)}, and still ${recalledWords(gentle)}.`;
}

/** One point of the curve. */
export const choiceWords = (choice: DeadlineChoice): string =>
  choice.last === null
    ? "No new cards."
    : `Last new cards on ${fullDate(choice.last)}, ${counted(choice.each, "card")} a day: ${recalledWords(choice)}.`;

/** Where the number recalled comes from, and what its range holds: whether recall is `uncertain`, or taken as known. */
export const cautionWords = (uncertain: boolean): string =>
  `How many are recalled on the date is an estimate: it takes recall at the box's visits and lets it fall between and after them along a power curve of forgetting, fitted to published experiments. The range holds ${
    uncertain ? "chance and what is not yet known about your recall" : "chance alone, as if recall were known"
  }.`;
