// The coming days in the size of a card: four weeks on each side, cut out like the cards and kept in the box.
import { inWeeks, type PlacedDay, type PrintedDay, shortDate, spanOf, WEEKDAYS } from "./calendar-pages.ts";
import { type Offset, sidedPages } from "./card-pages.ts";
import type { Imposition, Slot } from "./impose.ts";
import { type KitPage, nameItem, type PageItem, textItem, turnWith } from "./page.ts";

const WEEKS_A_SIDE = 4;

/** Millimetres: the edge, the line of the span, the line of the weekdays. */
const POCKET = { edge: 3, span: 4, weekdays: 3 } as const;

/** Four weeks for either side of a card. */
interface Pocket {
  readonly front: readonly PlacedDay[];
  readonly back: readonly PlacedDay[];
}

/** The pages of pocket calendars for these dates, laid out like cards; with their owner's name if there is one. */
export function pocketPages(
  days: readonly PrintedDay[],
  laid: Imposition,
  offset: Offset,
  owner = "",
): readonly KitPage[] {
  const sides = inWeeks(days, WEEKS_A_SIDE);
  const pockets: Pocket[] = [];
  for (let i = 0; i < sides.length; i += 2) pockets.push({ front: sides[i] ?? [], back: sides[i + 1] ?? [] });
  return sidedPages(pockets, laid, offset, (pocket, side, slot) => drawSide(pocket[side], slot, owner));
}

function drawSide(days: readonly PlacedDay[], slot: Slot, owner: string): readonly PageItem[] {
  if (days.length === 0) return [];
  const line = { x: slot.x + POCKET.edge, y: slot.y + POCKET.edge, width: slot.width - 2 * POCKET.edge };
  const span = spanOf(days.map(({ day }) => day));
  const cell = {
    width: line.width / 7,
    height: (slot.height - 2 * POCKET.edge - POCKET.span - POCKET.weekdays) / WEEKS_A_SIDE,
  };
  const top = line.y + POCKET.span + POCKET.weekdays;
  const items: PageItem[] = [
    textItem({ ...line, height: POCKET.span }, span, { most: 8, runs: [{ text: span, look: "strong" }] }),
    ...(owner === ""
      ? []
      : [
          nameItem({ ...line, x: line.x + line.width / 2, width: line.width / 2, height: POCKET.span }, owner, {
            most: 8,
            align: "end",
          }),
        ]),
    ...WEEKDAYS.map((name, i) =>
      textItem(
        { x: line.x + i * cell.width, y: line.y + POCKET.span, width: cell.width, height: POCKET.weekdays },
        name,
        { most: 6, align: "center", ink: "quiet" },
      ),
    ),
    ...days.flatMap(({ day, place }) =>
      drawDay(day, {
        ...cell,
        x: line.x + (place % 7) * cell.width,
        y: top + Math.floor(place / 7) * cell.height,
        turned: false,
      }),
    ),
  ];
  return items.map((item) => turnWith(item, slot));
}

function drawDay(day: PrintedDay, cell: Slot): readonly PageItem[] {
  const rest = day.chartDay === null;
  const inside = { x: cell.x + 0.6, width: cell.width - 1.2 };
  const share = cell.height / 3;
  const frame: PageItem = { kind: "box", ...cell, shade: rest ? 0.12 : null, frame: true };
  const date = textItem({ ...inside, y: cell.y + 0.9, height: share - 0.9 }, shortDate(day.date), {
    most: 6,
    least: 4,
    ink: "quiet",
    name: `${day.date} in the pocket calendar`,
  });
  if (rest)
    return [
      frame,
      date,
      textItem({ ...inside, y: cell.y + share, height: share }, "rest", { most: 7, align: "center", ink: "quiet" }),
    ];
  const number = `${day.chartDay}`;
  const middle = { align: "center", lie: "middle" } as const;
  return [
    frame,
    date,
    textItem({ ...inside, y: cell.y + share, height: share }, number, {
      most: 10,
      ...middle,
      runs: [{ text: number, look: "strong" }],
    }),
    textItem({ ...inside, y: cell.y + 2 * share, height: share - 0.4 }, day.piles.join(", ") || "nothing", {
      most: 7,
      least: 4,
      ...middle,
      name: `the piles of ${day.date} in the pocket calendar`,
    }),
  ];
}
