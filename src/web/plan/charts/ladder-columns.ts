// The columns of the ladders side by side: what each says, and in what order it puts them.
import type { LadderFigures } from "../../../core/chart/search-ladders.ts";
import { count } from "../../words.ts";
import { percent, periodWords } from "./figure-words.ts";

/** A column of the ladders. */
export interface LadderColumn {
  readonly key: string;
  readonly name: string;
  /** What ladders are put in order by. */
  readonly value: (ladder: LadderFigures) => number;
  /** What is shown, at a pace of new cards a day. */
  readonly words: (ladder: LadderFigures, pace: number) => string;
}

/** How the ladders are in order. */
export interface LadderOrder {
  readonly by: string;
  readonly falling: boolean;
}

/** Every column; the first names the ladder. */
export const LADDER_COLUMNS: readonly LadderColumn[] = [
  {
    key: "periods",
    name: "Days from visit to visit",
    value: ({ periods }) => periods.at(-1) ?? 0,
    words: ({ periods }) => periodWords(periods),
  },
  {
    key: "reviews",
    name: "Askings of a card",
    value: ({ reviewsPerCard }) => reviewsPerCard,
    words: ({ reviewsPerCard }) => reviewsPerCard.toFixed(1),
  },
  {
    key: "kept",
    name: "Days until kept",
    value: ({ daysUntilKept }) => daysUntilKept,
    words: ({ daysUntilKept }) => count(daysUntilKept),
  },
  {
    key: "peak",
    name: "Worst day, cards",
    value: ({ reviewsPerCard, peakToMean }) => reviewsPerCard * peakToMean,
    words: ({ reviewsPerCard, peakToMean }, pace) => count(reviewsPerCard * peakToMean * pace),
  },
  {
    key: "above",
    name: "Above the mean",
    value: ({ peakToMean }) => peakToMean,
    words: ({ peakToMean }) => percent(Math.max(0, peakToMean - 1)),
  },
  {
    key: "wait",
    name: "Longest wait, days",
    value: ({ longestWait }) => longestWait,
    words: ({ longestWait }) => count(longestWait),
  },
  {
    key: "year",
    name: "Recalled a year on",
    value: ({ recallAYearOn }) => recallAYearOn,
    words: ({ recallAYearOn }) => percent(recallAYearOn),
  },
  { key: "tabs", name: "Tabs", value: ({ tabs }) => tabs, words: ({ tabs }) => `${tabs}` },
  {
    key: "proved",
    name: "Proved best",
    value: ({ exact }) => (exact ? 1 : 0),
    words: ({ exact }) => (exact ? "yes" : "no"),
  },
  {
    key: "compartments",
    name: "Compartments",
    value: ({ compartments }) => compartments,
    words: ({ compartments }) => `${compartments}`,
  },
  { key: "growth", name: "Growth", value: ({ ratio }) => ratio, words: ({ ratio }) => `${ratio}` },
];

/** The order at first: those by which a card is kept soonest. */
export const FIRST_ORDER: LadderOrder = { by: "kept", falling: false };

/** The order after a column's heading is pressed: by it, rising first; pressed again, the other way round. */
export const orderPressed = (order: LadderOrder, by: string): LadderOrder => ({
  by,
  falling: order.by === by && !order.falling,
});

/** The ladders in order; those alike in it stay as they were. */
export function inOrder(ladders: readonly LadderFigures[], { by, falling }: LadderOrder): readonly LadderFigures[] {
  const column = LADDER_COLUMNS.find(({ key }) => key === by);
  if (!column) return ladders;
  const sign = falling ? -1 : 1;
  return ladders.toSorted((a, b) => sign * (column.value(a) - column.value(b)));
}
