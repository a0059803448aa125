// Logs for properties: any sequence of things that can be sent about a few cards of the night sky,
// sensible or not, with identities that rise with time.
import fc from "fast-check";
import type { Chart } from "../../src/core/chart/chart.ts";
import { inLogOrder, type LogEntry, type SetUpEntry } from "../../src/core/log/entry.ts";
import { createEntryId, type EntryId, entryTime } from "../../src/core/log/entry-id.ts";
import { shortChart } from "./any-chart.ts";

/** An entry that a page may send. */
export type Sendable = Exclude<LogEntry, { kind: "set-up" | "settings" | "chart" | "begin" }>;

/** A sitting that the entries belong to. */
export interface LogSitting {
  readonly id: EntryId;
  readonly day: number;
}

/** What entries are about: a box, its cards, and its sittings from the oldest to the newest. */
export interface LogScene {
  /** Tells identities of one scene from those of another. */
  readonly world?: number;
  readonly box: string;
  readonly cards: readonly string[];
  readonly sittings: readonly LogSitting[];
}

/** One thing that happens; numbers are taken modulo what there is to choose from. */
export interface Act {
  readonly what:
    | "next-sitting"
    | "look"
    | "introduction"
    | "visit"
    | "second"
    | "move"
    | "withdraw"
    | "bring-back"
    | "take-back"
    | "finish";
  readonly card: number;
  readonly recalled: boolean;
  readonly to: number | "kept" | "stock";
  readonly back: number;
}

/** Saturday evening at the observatory, the hour at which the made-up sittings begin. */
export const FIRST_EVENING = Date.parse("2026-03-14T20:00:00Z");

/** Milliseconds from one evening to the next. */
export const DAY_MS = 86_400_000;

/** An identity for the moment `seconds` after the beginning of sitting number `sitting`. */
export function idAt(sitting: number, seconds: number, world = 0): EntryId {
  const random = new Uint8Array(10).fill((sitting + seconds) & 255);
  random.set([world >> 8, world & 255], 8);
  return createEntryId(FIRST_EVENING + sitting * DAY_MS + seconds * 1000, random);
}

/** Visits and introductions are the usual thing; everything else happens now and then. */
export const anyAct: fc.Arbitrary<Act> = fc.record({
  what: fc.oneof(
    { weight: 8, arbitrary: fc.constant("visit" as const) },
    { weight: 4, arbitrary: fc.constant("introduction" as const) },
    { weight: 4, arbitrary: fc.constant("next-sitting" as const) },
    {
      weight: 6,
      arbitrary: fc.constantFrom("look", "second", "move", "withdraw", "bring-back", "take-back", "finish"),
    },
  ),
  card: fc.nat(63),
  recalled: fc.integer({ min: 1, max: 4 }).map((n) => n > 1),
  to: fc.constantFrom<(number | "kept" | "stock")[]>(1, 2, 3, 9, "kept", "stock"),
  back: fc.nat(63),
});

/** The entries of these acts in the order in which they happen, which is the order of their identities. */
export function entriesOf(acts: readonly Act[], { world, box, cards, sittings }: LogScene): readonly Sendable[] {
  const entries: Sendable[] = [];
  let at = 0;
  acts.forEach((act, i) => {
    const sitting = sittings[at] as LogSitting;
    const card = cards[act.card % cards.length] as string;
    const id = idAt(at, i + 1, world);
    const base = { id, box, at: FIRST_EVENING + at * DAY_MS + (i + 1) * 1000 };
    const own = { ...base, card, day: sitting.day };
    switch (act.what) {
      case "next-sitting":
        at = Math.min(at + 1, sittings.length - 1);
        return;
      case "look":
        entries.push({ ...own, kind: "look", sitting: sitting.id });
        return;
      case "introduction":
      case "visit":
      case "second":
        entries.push({
          ...own,
          kind: "outcome",
          sitting: sitting.id,
          pass: act.what,
          answer: act.recalled ? "recalled" : "missed",
          compartment: 1,
          bundle: 1,
          seconds: null,
        });
        return;
      case "move":
        entries.push({ ...own, kind: "move", to: act.to });
        return;
      case "withdraw":
        entries.push({ ...own, kind: "withdraw", reason: "hand" });
        return;
      case "bring-back":
        entries.push({ ...own, kind: "bring-back" });
        return;
      case "finish":
        entries.push({ ...base, kind: "finish", sitting: sitting.id });
        return;
      case "take-back": {
        const earlier = entries.filter((entry) => "card" in entry);
        const target = earlier[earlier.length - 1 - (act.back % Math.max(1, earlier.length))];
        if (target) entries.push({ ...base, kind: "take-back", entry: target.id });
      }
    }
  });
  return entries;
}

/** Sittings on the given days, one an evening. */
export const sittingsOn = (days: readonly number[]): readonly LogSitting[] =>
  days.map((day, i) => ({ id: idAt(i, 0), day }));

/** The set-up of the box of `anyLog`, before everything else in it. */
export const setUpWith = (chart: Chart): SetUpEntry => ({
  id: idAt(0, -1),
  box: "box",
  at: FIRST_EVENING - 1000,
  kind: "set-up",
  chart,
  calendar: {
    timeZone: "Europe/Lisbon",
    rollOverHour: 4,
    restWeekdays: [],
    restDates: [],
    policy: "chart-goes-on",
    anchor: { date: "2026-03-14", day: 1 },
  },
  newPerDay: 10,
  seed: "box",
});

/** A change of chart at some moment, in the middle of a sitting too; some are taken back in the end. */
const anyChange = fc.record({
  behind: fc.nat(63),
  chart: shortChart,
  later: fc.nat(2),
  back: fc.integer({ min: 1, max: 4 }).map((n) => n === 1),
});

type Change = typeof anyChange extends fc.Arbitrary<infer T> ? T : never;

/** An identity that sorts directly behind another, one for each `n`. */
const idBehind = (id: EntryId, n: number): EntryId => createEntryId(entryTime(id), new Uint8Array(10).fill(n + 1), id);

function withChanges(log: readonly LogEntry[], changes: readonly Change[]): readonly LogEntry[] {
  const last = log.at(-1);
  if (!last) return log;
  const added = changes.flatMap(({ behind, chart, later, back }, n): LogEntry[] => {
    const before = log[behind % log.length] ?? last;
    const day = "day" in before ? before.day : 1;
    const base = { box: "box", at: before.at };
    const change: LogEntry = { ...base, id: idBehind(before.id, n), kind: "chart", chart, day: day + later };
    const undone: LogEntry = { ...base, id: idBehind(last.id, n + 100), kind: "take-back", entry: change.id };
    return back ? [change, undone] : [change];
  });
  return inLogOrder([...log, ...added]);
}

/** Any log over four cards of two stars, in order, without the set-up: see `setUpWith`. */
export const anyLog: fc.Arbitrary<readonly LogEntry[]> = fc
  .tuple(
    fc.array(anyAct, { maxLength: 60 }),
    fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 12 }),
    fc.array(anyChange, { maxLength: 3 }),
  )
  .map(([acts, gaps, changes]) => {
    let day = 0;
    const days = gaps.map((gap) => {
      day += gap;
      return day;
    });
    const cards = ["vega:forward", "vega:reverse", "deneb:forward", "deneb:reverse"];
    return withChanges(entriesOf(acts, { box: "box", cards, sittings: sittingsOn(days) }), changes);
  });

/** The same entries as they might arrive: in another order, some of them twice. */
export const delivered = <T>(entries: readonly T[]): fc.Arbitrary<readonly T[]> =>
  fc
    .tuple(
      fc.shuffledSubarray([...entries], { minLength: entries.length, maxLength: entries.length }),
      fc.subarray([...entries]),
      fc.nat(),
    )
    .map(([shuffled, again, at]) => {
      const cut = shuffled.length === 0 ? 0 : at % shuffled.length;
      return [...shuffled.slice(0, cut), ...again, ...shuffled.slice(cut)];
    });
