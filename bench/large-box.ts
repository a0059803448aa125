// A large box made by the product's own rules: 440 days, 240 new cards a day, nine in ten recalled.
import { stockPlacement } from "../src/app/box-cards.ts";
import { createSubject, saveNewFacts } from "../src/app/facts.ts";
import type { PlacementRecord, Store } from "../src/app/ports.ts";
import { boxFrom } from "../src/app/set-up.ts";
import { applyEntry, type CardState, FRESH_CARD } from "../src/core/box/placement.ts";
import { addDays, localDateAt } from "../src/core/calendar/local-date.ts";
import { cardId } from "../src/core/cards/cards.ts";
import { LEVELLED_CHART } from "../src/core/chart/make-chart.ts";
import { type Fact, NO_EXTRAS } from "../src/core/facts/fact.ts";
import { batches } from "../src/core/lists.ts";
import type { CardLogEntry, LogEntry, SetUpEntry } from "../src/core/log/entry.ts";
import { createEntryId, type EntryId } from "../src/core/log/entry-id.ts";
import { uniform } from "../src/core/random.ts";
import { tallySittings } from "../src/core/sitting/sitting-tally.ts";

const DAY_MS = 86_400_000;

/** How large the box becomes. */
export interface Size {
  readonly facts: number;
  readonly days: number;
  readonly newPerDay: number;
}

/** Fills an empty store; resolves to the number of cards and of first answers. */
export async function makeLargeBox(store: Store, now: number, size: Size): Promise<{ cards: number; visits: number }> {
  const nextId = idMaker();
  const begun = now - size.days * DAY_MS;
  const subject = nextId(begun);
  const facts = Array.from({ length: size.facts }, (_, i) => starFact(nextId(begun), subject, i));
  const box = nextId(begun);
  const date = localDateAt(begun, "UTC", 4);
  const setUp: SetUpEntry = {
    id: nextId(begun),
    box,
    at: begun,
    kind: "set-up",
    chart: LEVELLED_CHART,
    calendar: {
      timeZone: "UTC",
      rollOverHour: 4,
      restWeekdays: [],
      restDates: [],
      policy: "chart-waits",
      anchor: { date, day: 1 },
    },
    newPerDay: size.newPerDay,
    seed: box,
  };
  await store.write(async (session) => {
    await createSubject(session, subject, "Faint stars");
    await session.boxes.saveBox(boxFrom(setUp));
    await session.boxes.appendEntries([setUp]);
    await session.boxes.addSubjectToBox(box, subject);
  });
  for (const batch of batches(facts, 5_000)) await store.write((session) => saveNewFacts(session, batch));
  return practise(store, setUp, facts, nextId, size);
}

async function practise(
  store: Store,
  setUp: SetUpEntry,
  facts: readonly Fact[],
  nextId: (at: number) => EntryId,
  size: Size,
) {
  const record = boxFrom(setUp);
  const all = facts.flatMap((fact) => fact.angles.map((angle) => ({ id: cardId(fact.id, angle), fact: fact.id })));
  const placements: PlacementRecord[] = all
    .map((card) => stockPlacement(record, card))
    .sort((a, b) => a.stockKey - b.stockKey);
  const states: CardState[] = placements.map(() => FRESH_CARD);
  const due = new Map<number, number[]>();
  let introduced = 0;
  let visits = 0;
  for (let day = 1; day <= size.days; day++) {
    const at = setUp.at + (day - 1) * DAY_MS + 3_600_000;
    const sitting = nextId(at);
    const base = { box: setUp.box, at, day } as const;
    const entries: LogEntry[] = [
      {
        ...base,
        id: sitting,
        kind: "begin",
        date: addDays(setUp.calendar.anchor.date, day - 1),
        newCards: size.newPerDay,
        fresh: [],
      },
    ];
    const happen = (i: number, pass: "visit" | "introduction", recalled: boolean): void => {
      const state = states[i] as CardState;
      const where = state.place.kind === "compartment" ? state.place : { compartment: 0, bundle: 0 };
      const entry: CardLogEntry = {
        ...base,
        id: nextId(at),
        kind: "outcome",
        card: placements[i]?.card ?? "",
        sitting,
        pass,
        answer: recalled ? "recalled" : "missed",
        compartment: where.compartment,
        bundle: where.bundle,
        seconds: 4 + 8 * uniform("seconds", `${i}/${day}`),
      };
      entries.push(entry);
      const after = applyEntry(setUp.chart, state, entry).state;
      states[i] = after;
      if (after.place.kind === "compartment") due.set(after.place.due, [...(due.get(after.place.due) ?? []), i]);
    };
    const today = due.get(day) ?? [];
    for (const i of today) happen(i, "visit", uniform("recall", `${i}/${day}`) < 0.9);
    visits += today.length;
    due.delete(day);
    for (let n = 0; n < size.newPerDay && introduced < placements.length; n++)
      happen(introduced++, "introduction", true);
    entries.push({ box: setUp.box, at, id: nextId(at), kind: "finish", sitting });
    await store.write(async ({ boxes }) => {
      await boxes.appendEntries(entries);
      for (const tally of tallySittings(entries)) await boxes.saveSitting(setUp.box, tally);
    });
  }
  await store.write(async ({ boxes }) => {
    for (const [i, placement] of placements.entries()) {
      if (states[i] !== FRESH_CARD)
        await boxes.savePlacement(setUp.box, { ...placement, state: states[i] as CardState });
    }
  });
  return { cards: placements.length, visits };
}

const starFact = (id: string, subject: string, i: number): Fact => ({
  id,
  subject,
  kind: "pair",
  prompt: `Catalogue star ${i + 1}`,
  answer: `Field ${Math.floor(i / 100) + 1}, place ${(i % 100) + 1}`,
  ...NO_EXTRAS,
  source: "made up for the measurement",
  angles: ["forward", "reverse"],
});

function idMaker(): (at: number) => EntryId {
  let last: EntryId | undefined;
  let count = 0;
  return (at) => {
    count++;
    const random = Uint8Array.from({ length: 10 }, (_, i) => Math.floor(uniform("id", `${count}/${i}`) * 256));
    last = createEntryId(at, random, last);
    return last;
  };
}
