// Dividers to cut out: as wide as a card and a tab higher, tabs beside each other, what to do written on each.
import { type Chart, cycleLength, step } from "../chart/chart.ts";
import { visitLabel } from "../chart/visit-label.ts";
import { ok, type Result } from "../result.ts";
import { cellsOf, fillSheet, type Slot } from "./impose.ts";
import { type KitPage, type LineItem, nameItem, type PageItem, textItem } from "./page.ts";
import type { Size } from "./paper.ts";

/** Size of a tab in millimetres; it is narrower where the card is. */
export const TAB = { height: 9, width: 26 } as const;

/** One divider: what its tab says, its words, and how far from the left its tab is. */
export interface Divider {
  readonly label: string;
  readonly title: string;
  readonly lines: readonly string[];
  /** Place of the tab, counted from 0 at the left; two neighbours never have the same. */
  readonly position: number;
}

/** How many tabs stand beside each other before they begin again at the left; at least 2. */
export const tabPositions = (cardWidth: number): number => Math.max(2, Math.floor(cardWidth / TAB.width));

/** The dividers of a box: stock, every bundle of every compartment, kept. */
export function dividersOf(chart: Chart, cardWidth: number): readonly Divider[] {
  const last = chart.compartments.length;
  const bundles = chart.compartments.flatMap((compartment, i) =>
    Array.from({ length: compartment.bundles }, (_, b) => {
      const visit = { compartment: i + 1, bundle: b + 1 };
      const divided = compartment.bundles > 1 ? `, bundle ${b + 1} of ${compartment.bundles}` : "";
      const up = i + 1 === last ? "Recalled: the card is kept." : `Recalled: on to compartment ${i + 2}.`;
      const down = i === 0 ? "Missed: stays in compartment 1." : "Missed: back to compartment 1.";
      return {
        label: visitLabel(chart, visit),
        title: `Compartment ${i + 1}${divided}`,
        lines: [
          visitedOn(compartment.offset + b * step(compartment), compartment.period, cycleLength(chart)),
          up,
          down,
        ],
      };
    }),
  );
  const stock = {
    label: "Stock",
    title: "Stock",
    lines: ["Cards that are yet to come into the box. Take new ones from the front."],
  };
  const kept = { label: "Kept", title: "Kept", lines: [`Cards that were recalled in compartment ${last}.`] };
  const positions = tabPositions(cardWidth);
  return [stock, ...bundles, kept].map((one, i) => ({ ...one, position: i % positions }));
}

/** "Visited every 4 days: on chart days 2, 6, 10, 14 … of 64." */
function visitedOn(first: number, period: number, cycle: number): string {
  if (period === 1) return "Visited every day.";
  const start = first % period === 0 ? period : first % period;
  const days = Array.from({ length: Math.min(4, cycle / period) }, (_, i) => start + i * period);
  const more = cycle / period > days.length ? " …" : "";
  return `Visited every ${period} days: on chart ${days.length > 1 ? "days" : "day"} ${days.join(", ")}${more} of ${cycle}.`;
}

/** Pages of dividers, printed on one side, with their owner's name if there is one. Fails if not even one fits on the sheet. */
export function dividerPages(chart: Chart, card: Size, sheet: Size, owner = ""): Result<readonly KitPage[], string> {
  const filled = fillSheet(sheet, { width: card.width, height: card.height + TAB.height });
  if (!filled.ok) return filled;
  const cells = cellsOf(filled.value);
  const dividers = dividersOf(chart, card.width);
  const pages: KitPage[] = [];
  for (let from = 0; from < dividers.length; from += cells.length) {
    const some = dividers.slice(from, from + cells.length);
    const items = some.flatMap((divider, i) => drawDivider(divider, cells[i] as Slot, owner));
    pages.push({ ...filled.value.sheet, items });
  }
  return ok(pages);
}

function drawDivider(divider: Divider, cell: Slot, owner: string): readonly PageItem[] {
  const { tab, outline } = shapeOf(divider, cell);
  const room = { x: cell.x + 6, width: cell.width - 12 };
  const top = cell.y + TAB.height;
  return [
    textItem(tab, divider.label, {
      most: 15,
      align: "center",
      lie: "middle",
      runs: [{ text: divider.label, look: "strong" }],
    }),
    textItem({ ...room, y: top + 6, height: 8 }, divider.title, {
      most: 14,
      runs: [{ text: divider.title, look: "strong" }],
    }),
    textItem({ ...room, y: top + 16, height: cell.height - TAB.height - 22 }, divider.lines.join("\n"), { most: 10 }),
    ...ownerItems(owner, { ...room, y: cell.y + cell.height - 6, height: 4.5 }),
    ...outline,
  ];
}

const ownerItems = (owner: string, place: Omit<Slot, "turned">): readonly PageItem[] =>
  owner === "" ? [] : [nameItem(place, owner, { most: 10, align: "end", lie: "middle" })];

/** The tab, and the line to cut along: round the tab and down to the body on either side of it. */
export function shapeOf(
  { position }: Pick<Divider, "position">,
  cell: Slot,
): { readonly tab: Slot; readonly outline: readonly LineItem[] } {
  const width = cell.width / tabPositions(cell.width);
  const tab = { ...cell, x: cell.x + position * width, width, height: TAB.height };
  const [right, shoulder, bottom] = [cell.x + cell.width, cell.y + TAB.height, cell.y + cell.height];
  const corners: readonly (readonly [number, number])[] = [
    [cell.x, bottom],
    [cell.x, shoulder],
    [tab.x, shoulder],
    [tab.x, cell.y],
    [tab.x + width, cell.y],
    [tab.x + width, shoulder],
    [right, shoulder],
    [right, bottom],
    [cell.x, bottom],
  ];
  const outline = corners
    .slice(1)
    .map((to, i) => ({ kind: "line", from: corners[i] as (typeof corners)[0], to, width: 0.15, look: "cut" }) as const);
  return { tab, outline };
}
