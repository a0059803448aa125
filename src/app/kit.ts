// What a printed kit is made from, out of a learner's own subject and box.
import { type Card, type CardId, cardFrom } from "../core/cards/cards.ts";
import { type Chart, compartmentCount } from "../core/chart/chart.ts";
import { visitLabel } from "../core/chart/visit-label.ts";
import type { Fact, PictureHash } from "../core/facts/fact.ts";
import { type PrintedDay, shortDate } from "../core/kit/calendar-pages.ts";
import type { KitCard } from "../core/kit/card-faces.ts";
import type { SheetPile, SittingSheet } from "../core/kit/sheet-layout.ts";
import { DEFAULT_PACE } from "../core/load/minutes.ts";
import { chooseNewCards, planSitting } from "../core/sitting/plan.ts";
import { type BoxToCome, type CalendarDay, calendarDays, daysToCome } from "./calendar-days.ts";
import { found } from "./failure.ts";
import { outlookOf } from "./outlook.ts";
import type { BoxRecord, Context, PictureRecord, Session } from "./ports.ts";

/** A card of the library as it is printed. */
export interface LibraryCard {
  readonly id: CardId;
  readonly fact: string;
  readonly card: KitCard;
}

/** The cards of a subject by number; those of deleted facts and of angles given up are left out. Fails with `not-found`. */
export async function cardsOfSubject({ library }: Session, subject: string): Promise<readonly LibraryCard[]> {
  found(await library.subject(subject), "subject");
  const facts = new Map<string, Fact>();
  for await (const fact of library.eachFact(subject)) facts.set(fact.id, fact);
  return (await library.cardsOfSubject(subject))
    .flatMap(({ id, number, fact, angle }) => {
      const from = facts.get(fact);
      return from?.angles.includes(angle) ? [{ id, fact, card: toKitCard(number, cardFrom(from, angle)) }] : [];
    })
    .sort((a, b) => a.card.number - b.card.number);
}

/** The pictures that some cards show. */
export const picturesOf = (context: Context, cards: readonly KitCard[]): Promise<ReadonlyMap<string, PictureRecord>> =>
  storedPictures(
    context,
    cards.flatMap(({ prompt, answer }) => [prompt.picture, answer.picture].filter((one) => one !== null)),
  );

/** Pictures by their hashes. Fails with `not-found`. */
export const storedPictures = (
  context: Context,
  hashes: readonly PictureHash[],
): Promise<ReadonlyMap<string, PictureRecord>> =>
  context.store.read(async ({ library }) => {
    const pictures = new Map<string, PictureRecord>();
    for (const hash of new Set(hashes)) pictures.set(hash, found(await library.picture(hash), "picture"));
    return pictures;
  });

/** A card as it is printed. */
export function toKitCard(number: number, card: Card): KitCard {
  const { prompt, answer, note, story, source, why, language, pictureAlt, pictureSource, pictureLicence } = card;
  return { number, prompt, answer, note, story, source, why, language, pictureAlt, pictureSource, pictureLicence };
}

/** The box's chart, its coming dates, and today's sitting sheet. */
export interface BoxKit {
  readonly chart: Chart;
  readonly days: readonly PrintedDay[];
  readonly sitting: SittingSheet;
}

/** The box on paper; null before it is set up. `count` dates, today first. */
export async function boxKit(context: Context, count: number): Promise<BoxKit | null> {
  const sitting = await context.store.read(async (session) => {
    const box = await session.boxes.box();
    return box ? sittingSheet(context, session, box) : null;
  });
  if (!sitting) return null;
  const { chart, days } = await calendarDays(context, count);
  return { chart, days: printedDays(chart, days), sitting };
}

/** What the calendar of a box that is yet to be begun depends on. */
export type BoxAhead = Pick<BoxToCome, "chart" | "start" | "restWeekdays" | "restDates">;

/** The paper of a box that is begun empty: its first `count` dates, and a blank sheet. */
export function boxKitToCome(box: BoxAhead, count: number): BoxKit {
  const recall = Array.from({ length: compartmentCount(box.chart) }, () => 1);
  const days = daysToCome({ ...box, newPerDay: 0, recall, pace: DEFAULT_PACE }, count);
  const sitting = { title: "Sitting of ____________, chart day ______", piles: [] };
  return { chart: box.chart, days: printedDays(box.chart, days), sitting };
}

/** Dates as they are printed; what was left undone stands before what the chart visits, in one order. */
export const printedDays = (chart: Chart, days: readonly CalendarDay[]): readonly PrintedDay[] =>
  days.map((day) =>
    day.rest
      ? { date: day.date, chartDay: null, piles: [] }
      : {
          date: day.date,
          chartDay: day.chartDay,
          piles: [...day.visits, ...day.late]
            .sort((a, b) => b.compartment - a.compartment || a.bundle - b.bundle)
            .map((visit) => visitLabel(chart, visit)),
        },
  );

/** Today's piles and new cards, as a sitting begun now would ask them; only the order within a pile is the number's. */
async function sittingSheet(context: Context, session: Session, box: BoxRecord): Promise<SittingSheet> {
  const outlook = await outlookOf(context, session, box);
  const { date, day } = outlook.now;
  const stock = await session.boxes.stock(box.id, 4 * outlook.newCards + 50);
  const fresh = outlook.open?.fresh ?? chooseNewCards(stock, outlook.newCards, new Set()).map((ref) => ref.card);
  const inStock = (await session.boxes.placements(box.id, fresh)).filter(({ state }) => state.place.kind === "stock");
  const plan = planSitting({
    sitting: box.id,
    day,
    due: await session.boxes.dueCards(box.id, day),
    fresh: inStock.map(({ card, fact }) => ({ card, fact })),
  });
  const numbered = async (title: string, cards: readonly { readonly card: string }[]): Promise<SheetPile> => {
    const records = await session.library.cards(cards.map((one) => one.card));
    return { title, numbers: records.map((one) => one.number).sort((a, b) => a - b) };
  };
  const piles: SheetPile[] = [];
  for (const pile of plan.piles) {
    const divided = (box.chart.compartments[pile.compartment - 1]?.bundles ?? 1) > 1;
    const bundle = divided ? `, bundle ${pile.bundle}` : "";
    piles.push(await numbered(`Compartment ${pile.compartment}${bundle}`, pile.cards));
  }
  if (plan.newCards.length > 0) piles.push(await numbered("New, from the stock", plan.newCards));
  if (piles.length === 0) piles.push({ title: "Nothing is due today", numbers: [] });
  return { title: `Sitting of ${shortDate(date)} ${date.slice(0, 4)}`, piles, from: { box: box.id, date, day } };
}
