// The chart on paper: as a ruler to hang up, and as a table to look a day up in.
import { type Chart, compartmentCount, cycleLength, visitsOn } from "../chart/chart.ts";
import { visitLabel } from "../chart/visit-label.ts";
import { type KitPage, type LineItem, type PageItem, textItem } from "./page.ts";
import { quarterTurn, type Size } from "./paper.ts";

/** Days that are printed of a chart that takes longer to come round. */
export const MOST_CHART_DAYS = 512;

const MARGIN = 15;

/** The chart's days that are printed. */
const daysOf = (chart: Chart): number => Math.min(cycleLength(chart), MOST_CHART_DAYS);

/** The ruler, lying: one tick a day, as high as the highest compartment visited on it. */
export function rulerPages(chart: Chart, sheet: Size): readonly KitPage[] {
  const { width, height } = quarterTurn(sheet);
  const days = daysOf(chart);
  const perRow = Math.min(days, 64);
  const rows = Math.ceil(days / perRow);
  const rowsPerPage = Math.min(4, rows);
  const room = { x: MARGIN, y: MARGIN + 18, width: width - 2 * MARGIN, height: height - 2 * MARGIN - 18 };
  const rowHeight = room.height / rowsPerPage;
  const pages: KitPage[] = [];
  for (let row = 0; row < rows; row += rowsPerPage) {
    const items: PageItem[] = [
      ...titleItems(chart, width, "Each tick is a day, as high as the highest compartment visited on it."),
    ];
    for (let r = row; r < Math.min(rows, row + rowsPerPage); r++) {
      const place = { ...room, y: room.y + (r - row) * rowHeight, height: rowHeight };
      items.push(
        ...rulerRow(chart, place, { first: r * perRow + 1, count: Math.min(perRow, days - r * perRow), perRow }),
      );
    }
    pages.push({ width, height, items });
  }
  return pages;
}

interface Row {
  readonly first: number;
  readonly count: number;
  readonly perRow: number;
}

function rulerRow(
  chart: Chart,
  room: Size & { readonly x: number; readonly y: number },
  row: Row,
): readonly PageItem[] {
  const highest = compartmentCount(chart);
  const base = room.y + room.height - 9;
  const pitch = room.width / row.perRow;
  const unit = (base - room.y - 6) / highest;
  const items: PageItem[] = [drawn([room.x, base], [room.x + room.width, base], 0.3)];
  for (let i = 0; i < row.count; i++) {
    const day = row.first + i;
    const top = visitsOn(chart, day)[0]?.compartment ?? 0;
    const x = room.x + (i + 0.5) * pitch;
    if (top > 0) items.push(drawn([x, base], [x, base - top * unit], 0.25 + (0.7 * top) / highest));
    const label = { x: x - 4, width: 8, height: 3.5 };
    if (top > 0)
      items.push(
        textItem({ ...label, y: base - top * unit - 4 }, `${top}`, { most: 8, align: "center", lie: "bottom" }),
      );
    if (day % 8 === 0 || i === 0)
      items.push(
        textItem({ ...label, y: base + 1.5 }, `${day}`, {
          most: 8,
          align: "center",
          ink: "quiet",
          name: `day ${day} of the ruler`,
        }),
      );
  }
  return items;
}

const drawn = (from: readonly [number, number], to: readonly [number, number], width: number): LineItem => ({
  kind: "line",
  from,
  to,
  width,
  look: "drawn",
});

/** The table, upright: every day with the piles to visit, highest compartment first. */
export function chartTablePages(chart: Chart, sheet: Size): readonly KitPage[] {
  const days = daysOf(chart);
  const columns = 4;
  const rows = Math.min(32, Math.max(16, Math.ceil(days / columns)));
  const room = { x: MARGIN, y: MARGIN + 20, width: sheet.width - 2 * MARGIN, height: sheet.height - 2 * MARGIN - 22 };
  const cell = { width: room.width / columns, height: Math.min(9, room.height / rows) };
  const pages: KitPage[] = [];
  for (let from = 0; from < days; from += columns * rows) {
    const items: PageItem[] = [
      ...titleItems(chart, sheet.width, "On each chart day, visit these piles from left to right."),
    ];
    for (let i = 0; i < Math.min(columns * rows, days - from); i++) {
      const day = from + i + 1;
      const [x, y] = [room.x + Math.floor(i / rows) * cell.width, room.y + (i % rows) * cell.height];
      const line = { y, height: cell.height - 1, turned: false };
      const piles =
        visitsOn(chart, day)
          .map((visit) => visitLabel(chart, visit))
          .join(", ") || "none";
      items.push(
        textItem({ ...line, x, width: 10 }, `${day}`, {
          most: 11,
          align: "end",
          lie: "middle",
          runs: [{ text: `${day}`, look: "strong" }],
        }),
        textItem({ ...line, x: x + 13, width: cell.width - 15 }, piles, {
          most: 11,
          lie: "middle",
          name: `day ${day} of the chart`,
        }),
        {
          kind: "line",
          from: [x + 2, y + cell.height - 0.5],
          to: [x + cell.width - 3, y + cell.height - 0.5],
          width: 0.08,
          look: "cut",
        },
      );
    }
    pages.push({ ...sheet, items });
  }
  return pages;
}

function titleItems(chart: Chart, width: number, words: string): readonly PageItem[] {
  const [cycle, shown] = [cycleLength(chart), daysOf(chart)];
  const rest =
    shown < cycle
      ? ` It repeats after ${cycle} days; the first ${shown} are here.`
      : ` After day ${cycle} it begins again at 1.`;
  const line = { x: MARGIN, width: width - 2 * MARGIN };
  const title = `The chart of ${compartmentCount(chart)} compartments`;
  return [
    textItem({ ...line, y: MARGIN, height: 9 }, title, {
      most: 18,
      heading: 1,
      runs: [{ text: title, look: "strong" }],
    }),
    textItem({ ...line, y: MARGIN + 9, height: 6 }, words + rest, { most: 10, ink: "quiet" }),
  ];
}
