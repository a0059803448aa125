// What is where: the drawer from above, the cards in a part of it, and one card's own history.
import type { Place } from "../core/box/placement.ts";
import { daysAhead } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { type Card, type CardId, cardFrom } from "../core/cards/cards.ts";
import { type BoxDay, nextVisit } from "../core/chart/chart.ts";
import { inLogOrder, type LogEntry } from "../core/log/entry.ts";
import { chartsOf } from "./charts.ts";
import { type Today, today } from "./days.ts";
import { found } from "./failure.ts";
import type { BoxRecord, CardRecord, Context, Library, PlaceCount, PlaceQuery, Session } from "./ports.ts";
import { boxView } from "./set-up.ts";
import type { CardHistory, DrawerView, Page, PlacedCard } from "./views.ts";

/** The box from above. Fails with `not-found` before it is set up. */
export const drawerView = (context: Context): Promise<DrawerView> =>
  context.store.read(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const now = await today(context, session, box);
    const { date, day } = now;
    const counts = await session.boxes.countPlaces(box.id);
    const due = await session.boxes.duePiles(box.id, day);
    const done = (await session.boxes.sittingsBetween(box.id, date, date)).some((sitting) => sitting.finished);
    const total = (place: PlaceCount["place"]) =>
      counts.filter((part) => part.place === place).reduce((sum, part) => sum + part.count, 0);
    const inBundle = (parts: readonly PlaceCount[], compartment: number, bundle: number): number =>
      parts.find((part) => part.place === "compartment" && part.compartment === compartment && part.bundle === bundle)
        ?.count ?? 0;
    const dates = datesOfDays(box, now);
    return {
      box: boxView(box),
      day,
      stock: total("stock"),
      compartments: box.chart.compartments.map(({ period, bundles }, i) => ({
        compartment: i + 1,
        period,
        bundles: Array.from({ length: bundles }, (_, b) => ({
          bundle: b + 1,
          count: inBundle(counts, i + 1, b + 1),
          due: inBundle(due, i + 1, b + 1),
          nextVisit: dates(nextVisit(box.chart, i + 1, b + 1, done ? day + 1 : day)),
        })),
      })),
      kept: total("kept"),
      withdrawn: total("withdrawn"),
    };
  });

/** As far as the dates of box days are looked for: a holiday may be long. */
const FARTHEST_DATE = 3_600;

/** Dates of box days from today on, if every practice day is kept; earlier days count as the next one that is. */
function datesOfDays({ calendar }: BoxRecord, { date, day: today, last }: Today): (day: BoxDay) => LocalDate {
  const dates = new Map<BoxDay, LocalDate>();
  let scanned = 0;
  return (day) => {
    while ((dates.size === 0 || (day > today && !dates.has(day))) && scanned < FARTHEST_DATE) {
      // Rest days are few; looking a quarter of a year further at a time is cheap.
      const from = scanned;
      scanned += 90;
      daysAhead(calendar, date, last, scanned).forEach((one, i) => {
        if (i >= from && one !== null) dates.set(one, addDays(date, i));
      });
    }
    const [next] = dates.values();
    return dates.get(day) ?? (day > today ? undefined : next) ?? addDays(date, scanned);
  };
}

/** Cards in one part of the box, a page at a time. */
export const cardsInPlace = (context: Context, query: PlaceQuery): Promise<Page<PlacedCard>> =>
  context.store.read(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const placements = await session.boxes.placed(box.id, query);
    const places = new Map(placements.map((one) => [one.card, one.state.place]));
    const items = await placeCards(
      session,
      placements.map((one) => one.card),
      places,
    );
    const counts = (await session.boxes.countPlaces(box.id)).filter(
      (part) =>
        part.place === query.place &&
        (query.compartment === undefined || part.compartment === query.compartment) &&
        (query.bundle === undefined || part.bundle === query.bundle),
    );
    const next = placements.length === query.limit ? (placements.at(-1)?.card ?? null) : null;
    return { items, next, total: counts.reduce((sum, part) => sum + part.count, 0) };
  });

/** Cards as they are shown, in the order asked for; those that do not exist are left out. */
export const readCards = (context: Context, ids: readonly CardId[]): Promise<readonly Card[]> =>
  context.store.read(async (session) => (await placeCards(session, ids, new Map())).map((one) => one.card));

async function placeCards(
  { library }: Session,
  ids: readonly CardId[],
  places: ReadonlyMap<CardId, Place>,
): Promise<readonly PlacedCard[]> {
  const records = new Map((await library.cards(ids)).map((record) => [record.id, record]));
  const facts = new Map(
    (await library.facts([...records.values()].map((record) => record.fact))).map(({ fact }) => [fact.id, fact]),
  );
  const names = await subjectNames(library);
  return ids.flatMap((id) => {
    const record = records.get(id);
    const fact = record && facts.get(record.fact);
    if (!record || !fact) return [];
    return [
      {
        card: cardFrom(fact, record.angle),
        subject: names.get(record.subject) ?? "",
        place: places.get(id) ?? null,
        number: record.number,
      },
    ];
  });
}

const subjectNames = async (library: Library): Promise<ReadonlyMap<string, string>> =>
  new Map((await library.subjects()).map(({ id, name }) => [id, name]));

/** One card with both sides, its place, and everything that happened to it. */
export const cardHistory = (context: Context, id: CardId): Promise<CardHistory> =>
  context.store.read(async (session) => {
    const record = found((await session.library.cards([id]))[0], "card");
    const { fact } = found(await session.library.fact(record.fact), "fact");
    const subject = (await subjectNames(session.library)).get(record.subject) ?? "";
    const base = { card: cardFrom(fact, record.angle), subject, number: record.number, fact };
    const box = await session.boxes.box();
    const placement = box && (await session.boxes.placement(box.id, id));
    if (!box || !placement) return { ...base, place: null, dueDate: null, entries: [] };
    return { ...base, ...(await storyOf(context, session, box, record, placement.state.place)) };
  });

async function storyOf(context: Context, session: Session, box: BoxRecord, record: CardRecord, place: Place) {
  const { entries, takenBack } = await session.boxes.entriesOfCards(box.id, [record.id]);
  const [first] = entries;
  // A change of chart is part of what happened to a card that was there.
  const changes = (await chartsOf(session, box)).changes.filter(({ id }) => first && id > first.id);
  const now = await today(context, session, box);
  const dueDate = place.kind === "compartment" ? datesOfDays(box, now)(place.due) : null;
  const story = inLogOrder<LogEntry>([...entries, ...changes]);
  return { place, dueDate, entries: story.map((entry) => ({ ...entry, takenBack: takenBack.has(entry.id) })) };
}
