// Sittings against a real database: clocks that were wrong, two windows, and changes in the middle.
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { NO_EXTRAS } from "../core/facts/fact.ts";
import { createEntryId } from "../core/log/entry-id.ts";
import { nextStep, replaySitting } from "../core/sitting/sitting.ts";
import { openSqliteStore } from "../store/sqlite-store.ts";
import { addFact, addSubject, deleteFact, editFact, restoreFact } from "./facts.ts";
import type { Context, Store } from "./ports.ts";
import { rebuild } from "./rebuild.ts";
import { recordEntries, type SentEntry } from "./record.ts";
import { changeSettings, setUpBox } from "./set-up.ts";
import { beginSitting } from "./sit.ts";
import { todayView } from "./today.ts";
import type { SittingView } from "./views.ts";

const DAY_MS = 86_400_000;
const START = Date.UTC(2026, 2, 14, 20);
const STARS = ["Vega", "Altair", "Deneb", "Arcturus", "Capella", "Rigel", "Spica", "Regulus"];
let store: Store;
let context: Context;
let now: number;
let box: string;
let last: string | undefined;

beforeEach(async () => {
  let seed = 0;
  now = START;
  last = undefined;
  store = await openSqliteStore(":memory:");
  context = {
    store,
    clock: () => now,
    random: (n) => Uint8Array.from({ length: n }, () => (seed = (seed * 31 + 7) % 251)),
  };
  await addSubject(context, "sky", "The night sky");
  for (const star of STARS) await addStar(star);
  box = (await setUpBox(context, { timeZone: "UTC", newPerDay: 4 })).id;
});

afterEach(() => store.close());

const addStar = (star: string) =>
  addFact(context, star, "sky", { kind: "pair", prompt: star, answer: `A card about ${star}`, ...NO_EXTRAS });

/** The next identity of one window, by the clock. */
const id = (after = last): string => {
  last = createEntryId(now, context.random(10), after);
  return last;
};

const begin = async (newCards: number): Promise<SittingView> => {
  const view = await beginSitting(context, id(), newCards);
  last = view.lastEntry;
  return view;
};

const outcome = (view: SittingView, card: string, answer: "recalled" | "missed", change: object = {}): SentEntry =>
  ({
    id: id(),
    box,
    at: now,
    kind: "outcome",
    card,
    day: view.plan.day,
    sitting: view.plan.sitting,
    pass: "introduction",
    answer,
    compartment: 0,
    bundle: 0,
    seconds: 5,
    ...change,
  }) as SentEntry;

const send = async (...entries: SentEntry[]): Promise<readonly string[]> =>
  (await recordEntries(context, entries)).map((receipt) => receipt.status);

const recallAll = async (view: SittingView): Promise<void> => {
  for (const { card } of view.plan.newCards) expect(await send(outcome(view, card, "recalled"))).toEqual(["saved"]);
  await send({ id: id(), box, at: now, kind: "finish", sitting: view.plan.sitting });
};

const asVisit = { pass: "visit", compartment: 1, bundle: 1 };

describe("a clock that was wrong", () => {
  test("for one sitting does not lock the box once it is put right", async () => {
    now = START + 400 * DAY_MS;
    await recallAll(await begin(2));
    now = START + DAY_MS;
    const view = await begin(2);
    expect(view.plan.newCards).toHaveLength(2);
    await recallAll(view);
    expect((await rebuild(context)).differences).toEqual([]);
  });

  test("cannot begin a sitting at the end of time", async () => {
    await expect(beginSitting(context, "ffffffff-ffff-7fff-bfff-ffffffffffff", 2)).rejects.toThrow(
      "more than a day ahead",
    );
  });
});

describe("two windows", () => {
  test("that answer one card while the server is away leave one answer that counts", async () => {
    await recallAll(await begin(2));
    now += DAY_MS;
    const view = await begin(0);
    const card = view.plan.piles[0]?.cards[0]?.card ?? "";
    const first = outcome(view, card, "missed", asVisit);
    const second = outcome(view, card, "recalled", asVisit);
    // The later window is heard first.
    expect(await send(second)).toEqual(["saved"]);
    expect(await send(first)).toEqual(["saved"]);
    const resumed = await begin(0);
    const cards = resumed.plan.piles.flatMap((pile) => pile.cards.map((ref) => ref.card));
    expect(new Set(cards).size).toBe(cards.length);
    expect((await todayView(context, "UTC")).sitting?.asked).toBe(1);
    expect(await store.read(({ boxes }) => boxes.recentVisits(box, 10))).toEqual([
      { sitting: view.plan.sitting, compartment: 1, recalled: 0, missed: 1 },
    ]);
    expect((await rebuild(context)).differences).toEqual([]);
  });
});

describe("a sitting under way", () => {
  test("keeps its new cards when facts are added in the middle", async () => {
    const view = await begin(3);
    await send(outcome(view, view.plan.newCards[0]?.card ?? "", "recalled"));
    for (const star of ["Sirius", "Canopus", "Pollux", "Castor", "Adhara"]) await addStar(star);
    expect((await begin(3)).plan.newCards).toEqual(view.plan.newCards);
  });

  test("goes on without a new card whose fact was deleted, and does not ask a missed one again", async () => {
    await recallAll(await begin(2));
    now += DAY_MS;
    const view = await begin(2);
    const [visit] = view.plan.piles[0]?.cards ?? [];
    await send(outcome(view, visit?.card ?? "", "missed", asVisit));
    const fresh = view.plan.newCards[0];
    await deleteFact(context, visit?.fact ?? "");
    await deleteFact(context, fresh?.fact ?? "");
    const resumed = await begin(2);
    expect(resumed.plan.newCards.map((ref) => ref.card)).not.toContain(fresh?.card);
    const state = replaySitting(resumed.plan, resumed.events);
    expect(state.secondPile).toEqual([]);
    expect(nextStep(state).kind).toBe("visit");
    expect(await recordEntries(context, [outcome(resumed, fresh?.card ?? "", "recalled")])).toMatchObject([
      { status: "refused", reason: "This card has been withdrawn from the box." },
    ]);
  });

  test("in which nothing happened yet gives way when the days are numbered anew", async () => {
    await recallAll(await begin(4));
    now += 5 * DAY_MS;
    const stale = await begin(0);
    expect(stale.plan.day).toBe(2);
    await changeSettings(context, { policy: "chart-goes-on" });
    const today = await todayView(context, "UTC");
    expect(today).toMatchObject({ day: 6, sitting: null });
    expect((await begin(0)).plan.day).toBe(6);
  });

  test("paused as the second of its day still offers the new cards it has left", async () => {
    await recallAll(await begin(4));
    const second = await begin(3);
    await send(outcome(second, second.plan.newCards[0]?.card ?? "", "recalled"));
    expect(await todayView(context, "UTC")).toMatchObject({ newCards: 2, introducedToday: 5 });
  });

  test("has one angle of a fact a day, where the stock allows it", async () => {
    const first = await begin(4);
    await recallAll(first);
    const second = await begin(4);
    const facts = [...first.plan.newCards, ...second.plan.newCards].map((ref) => ref.fact);
    expect(new Set(facts).size).toBe(8);
  });
});

describe("a chart that waits", () => {
  test("lets days pass by themselves on which there is nothing to do, and waits again when there is", async () => {
    // All eight facts are introduced and recalled until nothing is left to do for a while.
    await recallAll(await begin(16));
    for (
      let evening = 1;
      (await todayView(context, "UTC")).due + (await todayView(context, "UTC")).stock === 0;
      evening++
    ) {
      now += DAY_MS;
      expect(evening).toBeLessThan(3);
    }
    const view = await begin(0);
    for (const pile of view.plan.piles) {
      for (const { card } of pile.cards) {
        await send(
          outcome(view, card, "recalled", { pass: "visit", compartment: pile.compartment, bundle: pile.bundle }),
        );
      }
    }
    await send({ id: id(), box, at: now, kind: "finish", sitting: view.plan.sitting });
    const firstDue = (await store.read(({ boxes }) => boxes.firstDue(box))) ?? 0;
    expect(firstDue).toBeGreaterThan(view.plan.day);
    now += (firstDue - view.plan.day) * DAY_MS;
    expect(await todayView(context, "UTC")).toMatchObject({ day: firstDue, due: 16, missedDays: 0 });
    // From here on it is the person who is waited for.
    now += 5 * DAY_MS;
    expect(await todayView(context, "UTC")).toMatchObject({ day: firstDue, due: 16, missedDays: 5 });
  });
});

describe("cards of a fact that was deleted or is not asked any more", () => {
  test("do not come back by hand, by taking back, or by an older editor", async () => {
    await recallAll(await begin(8));
    const card = "Vega:forward";
    const base = { box, at: now, card, day: 1 } as const;
    await send({ ...base, id: id(), kind: "withdraw", reason: "hand" });
    const withdrawal = last ?? "";
    await deleteFact(context, "Vega");
    last = await store.read(({ boxes }) => boxes.lastEntryId(box)).then((newest) => newest ?? undefined);
    expect(await send({ ...base, id: id(), kind: "bring-back" })).toEqual(["refused"]);
    expect(await send({ ...base, id: id(), kind: "move", to: 2 })).toEqual(["refused"]);
    expect(await send({ id: id(), box, at: now, kind: "take-back", entry: withdrawal })).toEqual(["refused"]);
    await expect(
      editFact(context, "Vega", { kind: "pair", prompt: "Vega", answer: "Lyra", ...NO_EXTRAS }),
    ).rejects.toThrow("deleted");
  });

  test("stay out when the fact comes back without their angle", async () => {
    await editFact(context, "Vega", { kind: "pair", prompt: "Vega", answer: "Lyra", ...NO_EXTRAS }, ["forward"]);
    await deleteFact(context, "Vega");
    await restoreFact(context, "Vega");
    const places = await store.read(({ boxes }) => boxes.placements(box, ["Vega:forward", "Vega:reverse"]));
    expect(new Map(places.map((one) => [one.card, one.state.place.kind]))).toEqual(
      new Map([
        ["Vega:forward", "stock"],
        ["Vega:reverse", "withdrawn"],
      ]),
    );
  });
});
