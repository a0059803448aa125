// Setting a box up, and changing how its days run.
import { type Calendar, changeCalendar, freshCalendar } from "../core/calendar/calendar.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import type { Chart } from "../core/chart/chart.ts";
import { LEVELLED_CHART } from "../core/chart/make-chart.ts";
import type { SettingsEntry, SetUpEntry } from "../core/log/entry.ts";
import { stockPlacement, withdrawCards } from "./box-cards.ts";
import { today } from "./days.ts";
import { entryIds, freshId } from "./entry-ids.ts";
import { found } from "./failure.ts";
import type { BoxRecord, Context, Session } from "./ports.ts";
import type { BoxView } from "./views.ts";

/** What a new box gets unless something else is chosen. */
export const BOX_DEFAULTS = { newPerDay: 10, rollOverHour: 4 } as const;

/** Sets the learner's box up with all subjects; if there is one already, returns that one unchanged. */
export const setUpBox = (
  context: Context,
  options: { readonly timeZone: string; readonly chart?: Chart | undefined; readonly newPerDay?: number | undefined },
): Promise<BoxView> =>
  context.store.write(async (session) => {
    const known = await session.boxes.box();
    if (known) return boxView(known);
    const now = context.clock();
    const { timeZone } = options;
    const { rollOverHour } = BOX_DEFAULTS;
    const calendar = freshCalendar(localDateAt(now, timeZone, rollOverHour), timeZone, rollOverHour);
    const id = freshId(context);
    const entry: SetUpEntry = {
      id: freshId(context),
      box: id,
      at: now,
      kind: "set-up",
      chart: options.chart ?? LEVELLED_CHART,
      calendar,
      newPerDay: options.newPerDay ?? BOX_DEFAULTS.newPerDay,
      seed: id,
    };
    const box = boxFrom(entry);
    await session.boxes.saveBox(box);
    await session.boxes.appendEntries([entry]);
    for (const subject of await session.library.subjects()) {
      await fillBox(session, box, subject.id);
      await leaveOut(context, session, subject.id);
    }
    return boxView(box);
  });

/** Cards of facts that were deleted, and of angles that were given up, before there was a box: they can come back. */
async function leaveOut(context: Context, session: Session, subject: string): Promise<void> {
  const cards = await session.library.cardsOfSubject(subject);
  const records = await session.library.facts(cards.map((card) => card.fact));
  const byId = new Map(records.map((record) => [record.fact.id, record]));
  const gone = cards.filter((card) => byId.get(card.fact)?.deleted !== false);
  const unasked = cards.filter((card) => {
    const record = byId.get(card.fact);
    return record?.deleted === false && !record.fact.angles.includes(card.angle);
  });
  const ids = (some: typeof cards): readonly string[] => some.map((card) => card.id);
  await withdrawCards(context, session, ids(gone), "fact");
  await withdrawCards(context, session, ids(unasked), "angle");
}

/** Puts a subject into a box: its cards become stock. */
export async function fillBox({ library, boxes }: Session, box: BoxRecord, subject: string): Promise<void> {
  await boxes.addSubjectToBox(box.id, subject);
  const cards = await library.cardsOfSubject(subject);
  await boxes.addPlacements(
    box.id,
    cards.map((card) => stockPlacement(box, card)),
  );
}

/** The box that a set-up entry describes. */
export const boxFrom = ({ box, chart, calendar, newPerDay, seed }: SetUpEntry): BoxRecord => ({
  id: box,
  chart,
  calendar,
  newPerDay,
  seed,
});

/** What may be changed about a running box. */
export type BoxChange = { readonly [K in keyof Omit<Calendar, "anchor">]?: Calendar[K] | undefined } & {
  readonly newPerDay?: number | undefined;
};

/** Changes the calendar or the daily new cards. Days that were sat keep their numbers. */
export const changeSettings = (context: Context, change: BoxChange): Promise<BoxView> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const { last } = await today(context, session, box);
    const { newPerDay = box.newPerDay, ...given } = change;
    const days = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
    const calendar = changeCalendar(box.calendar, days, last);
    const nextId = await entryIds(context, session, box.id);
    const entry: SettingsEntry = {
      id: nextId(),
      box: box.id,
      at: context.clock(),
      kind: "settings",
      calendar,
      newPerDay,
    };
    await session.boxes.appendEntries([entry]);
    const changed = { ...box, calendar, newPerDay };
    await session.boxes.saveBox(changed);
    return boxView(changed);
  });

/** A box as it is shown. */
export const boxView = ({ id, chart, calendar, newPerDay }: BoxRecord): BoxView => ({ id, chart, calendar, newPerDay });
