// The coming days on paper: a row for every week, a cell for every date, with the chart day and the piles that are due.
import type { LocalDate } from "../calendar/local-date.ts";
import { isoWeekday } from "../calendar/local-date.ts";
import { type KitPage, type PageItem, textItem } from "./page.ts";
import type { Size } from "./paper.ts";

/** One date as it is printed; `chartDay` is null on a rest day. */
export interface PrintedDay {
  readonly date: LocalDate;
  readonly chartDay: number | null;
  /** Labels of the piles, highest compartment first. */
  readonly piles: readonly string[];
}

const MARGIN = 12;
const WEEKS_A_PAGE = 10;
const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** "14 Mar". */
export const shortDate = (date: LocalDate): string =>
  `${Number(date.slice(8, 10))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;

/** Dates one after another, in weeks from Monday to Sunday. */
export function calendarPages(days: readonly PrintedDay[], sheet: Size): readonly KitPage[] {
  const first = days[0];
  const last = days.at(-1);
  if (!first || !last) return [];
  const lead = isoWeekday(first.date) - 1;
  const weeks = Math.ceil((lead + days.length) / 7);
  const pages: KitPage[] = [];
  const span = `${shortDate(first.date)} ${first.date.slice(0, 4)} to ${shortDate(last.date)} ${last.date.slice(0, 4)}`;
  for (let week = 0; week < weeks; week += WEEKS_A_PAGE) {
    const from = Math.max(0, week * 7 - lead);
    const some = days.slice(from, (week + WEEKS_A_PAGE) * 7 - lead);
    const items = [
      ...heads(sheet, span),
      ...some.flatMap((day, i) => dayItems(day, cellOf(sheet, lead + from + i - week * 7))),
    ];
    pages.push({ ...sheet, items });
  }
  return pages;
}

function heads(sheet: Size, span: string): readonly PageItem[] {
  const width = (sheet.width - 2 * MARGIN) / 7;
  const line = { x: MARGIN, width: sheet.width - 2 * MARGIN };
  const words =
    "In each cell: the date, the chart day, and the piles to visit. Tick the cell when the sitting is done.";
  return [
    textItem({ ...line, y: MARGIN, height: 8 }, span, {
      most: 16,
      heading: 1,
      runs: [{ text: `Calendar, ${span}`, look: "strong" }],
    }),
    textItem({ ...line, y: MARGIN + 8, height: 5 }, words, { most: 9, ink: "quiet" }),
    ...WEEKDAYS.map((name, i) =>
      textItem({ x: MARGIN + i * width, y: MARGIN + 15, width, height: 5 }, name, {
        most: 10,
        align: "center",
        ink: "quiet",
      }),
    ),
  ];
}

function cellOf(sheet: Size, index: number) {
  const [width, height] = [(sheet.width - 2 * MARGIN) / 7, (sheet.height - 2 * MARGIN - 21) / WEEKS_A_PAGE];
  return {
    x: MARGIN + (index % 7) * width,
    y: MARGIN + 21 + Math.floor(index / 7) * height,
    width,
    height,
    turned: false,
  };
}

function dayItems(day: PrintedDay, cell: ReturnType<typeof cellOf>): readonly PageItem[] {
  const rest = day.chartDay === null;
  const inside = { x: cell.x + 1.5, width: cell.width - 3 };
  const name = (what: string): Partial<{ name: string }> => ({ name: `${what} of ${day.date} in the calendar` });
  const items: PageItem[] = [
    { kind: "box", ...cell, shade: rest ? 0.12 : null, frame: true },
    textItem({ ...inside, y: cell.y + 1.5, height: 4 }, shortDate(day.date), { most: 9, ink: "quiet" }),
  ];
  if (rest)
    return [
      ...items,
      textItem({ ...inside, y: cell.y + 8, height: 5 }, "rest", { most: 9, align: "center", ink: "quiet" }),
    ];
  const number = `${day.chartDay}`;
  const piles = day.piles.join(", ") || "nothing";
  return [
    ...items,
    textItem({ ...inside, y: cell.y + 5.5, height: 7 }, number, {
      most: 15,
      align: "center",
      lie: "middle",
      runs: [{ text: number, look: "strong" }],
    }),
    textItem({ ...inside, y: cell.y + 13, height: cell.height - 14 }, piles, {
      most: 9,
      least: 5,
      align: "center",
      ...name("the piles"),
    }),
  ];
}
