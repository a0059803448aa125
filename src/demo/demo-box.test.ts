import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldLog } from "../core/box/fold-log.ts";
import { applyEntry, type CardState, FRESH_CARD } from "../core/box/placement.ts";
import { isRestDay } from "../core/calendar/calendar.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import { cardsOf } from "../core/cards/cards.ts";
import { LEVELLED_CHART } from "../core/chart/make-chart.ts";
import { type BeginEntry, isCardEntry, type LogEntry, type OutcomeEntry, type SetUpEntry } from "../core/log/entry.ts";
import { entryTime, isEntryId } from "../core/log/entry-id.ts";
import { shuffleByKey } from "../core/random.ts";
import { buildDemoBox, type DemoBox } from "./demo-box.ts";
import { demoDrawings, demoSounds } from "./sky-facts.ts";

const hashed = (things: readonly { readonly name: string }[], from: number) =>
  new Map(things.map(({ name }, i) => [name, (from + i).toString(16).padStart(64, "0")]));
const hashes = { pictures: hashed(demoDrawings(), 0), sounds: hashed(demoSounds(), 1_000) };

/** A Monday morning; a Sunday evening after the clocks went back; the small hours, still the day before. */
const CASES = [
  { now: Date.parse("2026-03-30T09:00:00Z"), timeZone: "Europe/Lisbon" },
  { now: Date.parse("2026-11-01T23:30:00Z"), timeZone: "America/New_York" },
  { now: Date.parse("2026-07-14T14:20:00Z"), timeZone: "Pacific/Auckland" },
] as const;

const MOST_MILLISECONDS = 1500;

const ofKind = <K extends LogEntry["kind"]>(box: DemoBox, kind: K) =>
  box.entries.filter((entry): entry is Extract<LogEntry, { kind: K }> => entry.kind === kind);

const takenBack = (box: DemoBox): ReadonlySet<string> => new Set(ofKind(box, "take-back").map(({ entry }) => entry));

/** What `applyEntry` says of every card entry that counts, in log order. */
function verdicts(box: DemoBox): readonly { entry: LogEntry; ignored: string | null }[] {
  const gone = takenBack(box);
  const states = new Map<string, CardState>();
  return box.entries
    .filter(isCardEntry)
    .filter(({ id }) => !gone.has(id))
    .map((entry) => {
      const { state, ignored } = applyEntry(LEVELLED_CHART, states.get(entry.card) ?? FRESH_CARD, entry);
      states.set(entry.card, state);
      return { entry, ignored };
    });
}

describe.each(CASES)("the demo box in $timeZone", ({ now, timeZone }) => {
  const started = performance.now();
  const box = buildDemoBox({ now, timeZone, hashes });
  const taken = performance.now() - started;
  const today = localDateAt(now, timeZone, 4);
  const setUp = box.entries[0] as SetUpEntry;
  const begins = ofKind(box, "begin");
  const visits = ofKind(box, "outcome").filter(({ pass, id }) => pass === "visit" && !takenBack(box).has(id));

  it("is made quickly and comes out the same again", () => {
    expect(taken).toBeLessThan(MOST_MILLISECONDS);
    expect(buildDemoBox({ now, timeZone, hashes })).toEqual(box);
    expect(buildDemoBox({ now, timeZone, hashes, seed: "other" }).entries).not.toEqual(box.entries);
  });

  it("begins with its setting up: the levelled chart, a calendar that waits, one rest day, eight new cards", () => {
    expect(setUp).toMatchObject({ kind: "set-up", chart: LEVELLED_CHART, newPerDay: 8 });
    expect(setUp.calendar).toMatchObject({ timeZone, rollOverHour: 4, policy: "chart-waits" });
    expect(setUp.calendar.restWeekdays).toHaveLength(1);
    expect(isRestDay(setUp.calendar, today)).toBe(false);
    expect(ofKind(box, "set-up")).toHaveLength(1);
  });

  it("has identities that rise with time and agree with it, all before now", () => {
    const ids = box.entries.map(({ id }) => id);
    expect(ids.every(isEntryId)).toBe(true);
    expect(ids.every((id, i) => i === 0 || (ids[i - 1] as string) < id)).toBe(true);
    expect(box.entries.every(({ id, at }) => Math.abs(entryTime(id) - at) <= 1)).toBe(true);
    expect(
      box.entries.every(
        ({ at, box: owner }, i) => at < now && owner === box.boxId && at >= (box.entries[i - 1]?.at ?? 0),
      ),
    ).toBe(true);
  });

  it("was sat on evenings of forty days that end yesterday at the latest, never on a rest day", () => {
    for (const { date, at } of begins) {
      expect(localDateAt(at, timeZone, 4)).toBe(date);
      expect(localDateAt(at, timeZone, 19)).toBe(date);
      expect(isRestDay(setUp.calendar, date)).toBe(false);
      expect(date < today).toBe(true);
    }
    expect(begins.map(({ day }) => day)).toEqual(begins.map((_, i) => i + 1));
    expect(new Set(begins.map(({ date }) => date)).size).toBe(begins.length);
    expect(ofKind(box, "finish").map(({ sitting }) => sitting)).toEqual(begins.map(({ id }) => id));
  });

  it("counts every answer that was not taken back", () => {
    const all = verdicts(box);
    expect(all.length).toBeGreaterThan(1000);
    expect(all.filter(({ ignored }) => ignored !== null)).toEqual([]);
  });

  it("writes down where each visited card lay", () => {
    const states = new Map<string, CardState>();
    const gone = takenBack(box);
    for (const entry of box.entries.filter(isCardEntry)) {
      const before = states.get(entry.card) ?? FRESH_CARD;
      if (entry.kind === "outcome" && entry.pass === "visit") {
        expect(before.place).toMatchObject({
          kind: "compartment",
          compartment: entry.compartment,
          bundle: entry.bundle,
        });
      }
      if (!gone.has(entry.id)) states.set(entry.card, applyEntry(LEVELLED_CHART, before, entry).state);
    }
  });

  it("asks at each sitting, once, exactly the cards that are due, from the highest compartment down", () => {
    const states = new Map<string, CardState>();
    const gone = takenBack(box);
    for (const begin of begins) {
      const due = [...states]
        .filter(([, { place }]) => place.kind === "compartment" && place.due <= begin.day)
        .map(([card]) => card);
      const own = visits.filter(({ sitting }) => sitting === begin.id);
      expect(own.map(({ card }) => card).sort()).toEqual(due.sort());
      expect(own.every(({ compartment }, i) => compartment <= (own[i - 1]?.compartment ?? compartment))).toBe(true);
      for (const entry of box.entries.filter(isCardEntry)) {
        if (!("sitting" in entry) || entry.sitting !== begin.id || gone.has(entry.id)) continue;
        states.set(entry.card, applyEntry(LEVELLED_CHART, states.get(entry.card) ?? FRESH_CARD, entry).state);
      }
    }
  });

  it("introduces eight cards at each sitting, of different facts, from the front of the stock", () => {
    const order = shuffleByKey(box.facts.flatMap(cardsOf), setUp.seed, (card) => card.id);
    const place = new Map(order.map((card, i) => [card.id, i]));
    const looks = ofKind(box, "look");
    for (const begin of begins) {
      const own = looks.filter(({ sitting }) => sitting === begin.id);
      expect(own).toHaveLength(begin.newCards);
      expect(new Set(own.map(({ card }) => card.split(":")[0])).size).toBe(own.length);
    }
    const furthest = Math.max(...looks.map(({ card }) => place.get(card) ?? Number.POSITIVE_INFINITY));
    // Only cards whose fact came up on the same day may be passed over for a while.
    expect(furthest).toBeLessThan(looks.length + 8);
  });

  it("leaves every card in one place: stock, or one of compartments 1 to 6, none of them empty", () => {
    const states = foldLog(box.entries);
    const cards = new Set(box.facts.flatMap(cardsOf).map((card) => card.id));
    const count = new Map<number, number>();
    for (const [card, { place }] of states) {
      expect(cards.has(card)).toBe(true);
      expect(place.kind).toBe("compartment");
      if (place.kind === "compartment") count.set(place.compartment, (count.get(place.compartment) ?? 0) + 1);
    }
    expect([...count.keys()].sort()).toEqual([1, 2, 3, 4, 5, 6]);
    expect([...count.values()].reduce((sum, n) => sum + n)).toBe(8 * begins.length);
    expect(states.size).toBeLessThan(cards.size);
  });

  it("shows two slips of the finger, each taken back and the card asked again", () => {
    const slips = ofKind(box, "take-back").map(
      ({ entry }) => box.entries.find(({ id }) => id === entry) as OutcomeEntry,
    );
    expect(slips).toHaveLength(2);
    for (const slip of slips) {
      const again = visits.filter(({ card, sitting }) => card === slip.card && sitting === slip.sitting);
      expect(again).toHaveLength(1);
      expect((again[0] as OutcomeEntry).id > slip.id).toBe(true);
    }
  });

  it("was recalled about nine times in ten, and some cards again and again not", () => {
    const recalled = visits.filter(({ answer }) => answer === "recalled").length / visits.length;
    expect(recalled).toBeGreaterThan(0.8);
    expect(recalled).toBeLessThan(0.95);
    const misses = new Map<string, number>();
    for (const { card, answer } of visits) if (answer === "missed") misses.set(card, (misses.get(card) ?? 0) + 1);
    expect(Math.max(...misses.values())).toBeGreaterThanOrEqual(4);
    expect(visits.every(({ seconds }) => seconds !== null && seconds >= 3 && seconds <= 25)).toBe(true);
  });
});

describe("the demo box at any time of the year", () => {
  it("has no answer that does not count and nothing in the future", () => {
    const instants = fc.integer({ min: Date.parse("2025-01-01T00:00:00Z"), max: Date.parse("2035-01-01T00:00:00Z") });
    const zones = fc.constantFrom("UTC", "Europe/Lisbon", "America/St_Johns", "Asia/Kathmandu", "Pacific/Kiritimati");
    fc.assert(
      fc.property(instants, zones, (now, timeZone) => {
        const box = buildDemoBox({ now, timeZone, hashes });
        const today = localDateAt(now, timeZone, 4);
        const begins = box.entries.filter((entry): entry is BeginEntry => entry.kind === "begin");
        expect(verdicts(box).every(({ ignored }) => ignored === null)).toBe(true);
        expect(box.entries.every(({ at }) => at < now)).toBe(true);
        expect(begins.every(({ date }) => date < today)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });
});
