// A kit as a person chose it, made into the plan that is laid out.

import type { LocalDate } from "../core/calendar/local-date.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import { LEVELLED_CHART } from "../core/chart/make-chart.ts";
import type { CardMark } from "../core/kit/card-faces.ts";
import type { Offset } from "../core/kit/card-pages.ts";
import type { Turn } from "../core/kit/impose.ts";
import type { ClassPack, KitPart, KitPlan } from "../core/kit/kit-pages.ts";
import type { Size } from "../core/kit/paper.ts";
import { CALENDAR_DAYS } from "./calendar-days.ts";
import { found } from "./failure.ts";
import { type BoxKit, boxKit, boxKitToCome, type LibraryCard } from "./kit.ts";
import type { Context } from "./ports.ts";
import { cardsOnPaper, toBePrinted } from "./print-versions.ts";
import { BOX_DEFAULTS } from "./set-up.ts";

/** How a kit is printed. */
export interface PrintChoices {
  readonly sheet: Size;
  readonly card: Size;
  readonly turn: Turn;
  readonly parts: ReadonlySet<KitPart>;
  readonly mark: CardMark;
  readonly offset: Offset;
  /** Millimetres by which a picture that fills a side runs past the cut. */
  readonly bleed: number;
  readonly language: string;
}

/** A kit as it was chosen. */
export interface KitChoices extends PrintChoices {
  /** Their cards are printed one subject after another. */
  readonly subjects: readonly string[];
  /** Whether cards whose paper is in order are left out. */
  readonly only: "all" | "changed";
  /** Dates in the calendars. */
  readonly days?: number | undefined;
  /** A box for each name, begun empty on `start`. */
  readonly pack?: (ClassPack & { readonly start: LocalDate | null }) | undefined;
  /** Where the person is, if there is no box yet. */
  readonly timeZone: string;
}

/** A plan, and the cards in it as they are in the library. */
export interface PlannedKit {
  readonly plan: KitPlan;
  readonly cards: readonly LibraryCard[];
}

/** The plan of a kit. Fails with `not-found` for a subject that is not there. */
export async function planKit(context: Context, choices: KitChoices): Promise<PlannedKit> {
  const { sheet, card, turn, parts, offset, bleed, mark, language, pack } = choices;
  const { title, cards } = await chosenCards(context, choices);
  const box = await chosenBox(context, choices);
  const style = { title, mark, language };
  const named = pack && pack.names.length > 0 ? { pack: { names: pack.names, onCards: pack.onCards } } : {};
  const printed = cards.map((one) => one.card);
  return { plan: { sheet, card, turn, parts, offset, bleed, style, cards: printed, ...box, ...named }, cards };
}

const chosenCards = (context: Context, { subjects, only }: KitChoices) =>
  context.store.read(async (session) => {
    const names: string[] = [];
    const cards: LibraryCard[] = [];
    for (const subject of new Set(subjects)) {
      const { name } = found(await session.library.subject(subject), "subject");
      names.push(name);
      const all = await cardsOnPaper(session, subject);
      for (const { id, fact, card } of only === "changed" ? toBePrinted(all) : all)
        cards.push({ id, fact, card: subjects.length > 1 ? { ...card, title: name } : card });
    }
    return { title: names.join(", "), cards };
  });

/** The learner's own box as it stands; for a class pack, and before there is a box, one that is begun empty. */
async function chosenBox(context: Context, { days, pack, timeZone }: KitChoices): Promise<BoxKit> {
  const count = days ?? CALENDAR_DAYS.usual;
  const named = pack !== undefined && pack.names.length > 0;
  const own = named ? null : await boxKit(context, count);
  if (own) return own;
  const box = await context.store.read(({ boxes }) => boxes.box());
  const rollOver = box?.calendar.rollOverHour ?? BOX_DEFAULTS.rollOverHour;
  const today = localDateAt(context.clock(), box?.calendar.timeZone ?? timeZone, rollOver);
  const ahead = {
    chart: box?.chart ?? LEVELLED_CHART,
    start: pack?.start ?? today,
    restWeekdays: box?.calendar.restWeekdays ?? [],
    restDates: box?.calendar.restDates ?? [],
  };
  return boxKitToCome(ahead, count);
}
