// What a person has filled in for one day on paper.
import type { PaperDayView } from "../../app/views.ts";
import { printedNumber } from "../../core/cards/card-number.ts";
import { type MissedNumbers, parseMissed, parseNumbers } from "../../core/paper/missed-numbers.ts";
import type { SheetReading } from "../../core/paper/sheet-reading.ts";
import type { PaperDays } from "../client.ts";

/** A day as it is filled in. */
export interface FilledDay {
  /** Due cards that were not asked. */
  readonly left: ReadonlySet<number>;
  /** The missed cards as they were typed. */
  readonly missed: string;
  /** New cards that are ticked. */
  readonly ticked: ReadonlySet<number>;
  /** Other new cards as they were typed. */
  readonly others: string;
}

/** Results of one day as the server takes them. */
export type PaperOrder = PaperDays[number];

/** What a filled day says. */
export interface ReadDay {
  readonly order: PaperOrder;
  readonly missed: MissedNumbers;
  readonly others: ReturnType<typeof parseNumbers>;
  /** No card was asked and none introduced. */
  readonly isEmpty: boolean;
  readonly isSound: boolean;
}

/** Every pile asked, nothing missed, no new cards. */
export const UNTOUCHED: FilledDay = { left: new Set(), missed: "", ticked: new Set(), others: "" };

const dueOf = ({ piles }: PaperDayView): readonly number[] => piles.flatMap((pile) => pile.numbers);

/** A day filled in by its sheet. */
export function filledBy(view: PaperDayView, { asked, missed }: SheetReading): FilledDay {
  const due = new Set(dueOf(view));
  const fresh = asked.filter((one) => !due.has(one));
  return {
    left: new Set([...due].filter((one) => !asked.includes(one))),
    missed: missed.map(printedNumber).join(", "),
    ticked: new Set(fresh.filter((one) => view.newCards.includes(one))),
    others: fresh
      .filter((one) => !view.newCards.includes(one))
      .map(printedNumber)
      .join(", "),
  };
}

/** Reads a filled day against what was due. */
export function readDay(view: PaperDayView, { left, missed: typed, ticked, others: more }: FilledDay): ReadDay {
  const due = dueOf(view);
  const others = parseNumbers(more);
  const fresh = view.newCards.filter((one) => ticked.has(one));
  const introduced = [...new Set([...fresh, ...others.numbers])];
  const missed = parseMissed(typed, new Set([...due, ...introduced]));
  const asked = due.filter((one) => !left.has(one) || missed.numbers.includes(one));
  return {
    order: { date: view.date, asked, missed: [...missed.numbers], introduced },
    missed,
    others,
    isEmpty: asked.length + introduced.length === 0,
    isSound: missed.problems.length + others.problems.length === 0,
  };
}
