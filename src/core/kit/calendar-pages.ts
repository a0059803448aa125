// The coming days on paper: a row for every week, a cell for every date, with the chart day and the piles that are due.
import type { LocalDate } from "../calendar/local-date.ts";
import { isoWeekday } from "../calendar/local-date.ts";
import { type KitPage, nameItem, type PageItem, textItem } from "./page.ts";
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
/** Columns of a calendar. */
export const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** "14 Mar". */
export const shortDate = (date: LocalDate): string =>
  `${Number(date.slice(8, 10))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;

/** Dates one after another, in weeks from Monday to Sunday, to hang up; with their owner's name if there is one. */
export const calendarPages = (days: readonly PrintedDay[], sheet: Size, owner = ""): readonly KitPage[] =>
  inWeeks(days, WEEKS_A_PAGE).map((some) => ({
    ...sheet,
    items: [
      ...heads(sheet, spanOf(days)),
      ...(owner === "" ? [] : [nameItem(ownerPlace(sheet), owner, { most: 14, align: "end" })]),
      ...some.flatMap(({ day, place }) => dayItems(day, cellOf(sheet, place))),
    ],
  }));

const ownerPlace = ({ width }: Size) => ({ x: width / 2 + 20, y: MARGIN, width: width / 2 - 20 - MARGIN, height: 8 });

/** A date and its place among the cells of a page, counted from 0 on a Monday. */
export interface PlacedDay {
  readonly day: PrintedDay;
  readonly place: number;
}

/** Dates one after another, in pages of so many weeks from Monday to Sunday. */
export function inWeeks(days: readonly PrintedDay[], weeksAPage: number): readonly (readonly PlacedDay[])[] {
  const [first] = days;
  if (!first) return [];
  const lead = isoWeekday(first.date) - 1;
  const cells = weeksAPage * 7;
  const pages: PlacedDay[][] = [];
  days.forEach((day, i) => {
    const at = Math.floor((lead + i) / cells);
    pages[at] ??= [];
    pages[at].push({ day, place: (lead + i) % cells });
  });
  return pages;
}

/** "14 Mar 2026 to 16 May 2026". */
export function spanOf(days: readonly PrintedDay[]): string {
  const dates = [days[0], days.at(-1)].flatMap((day) => (day ? [day.date] : []));
  return dates.map((date) => `${shortDate(date)} ${date.slice(0, 4)}`).join(" to ");
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
