// A learner's box set up through the use cases: stars as facts, and some evenings on which somebody sat down.
import { changeChart } from "../../src/app/change-chart.ts";
import { addFact, addSubject } from "../../src/app/facts.ts";
import { changeSettings, setUpBox } from "../../src/app/set-up.ts";
import { beginSitting } from "../../src/app/sit.ts";
import { cardId } from "../../src/core/cards/cards.ts";
import type { Chart } from "../../src/core/chart/chart.ts";
import type { LogEntry } from "../../src/core/log/entry.ts";
import { DAY_MS, FIRST_EVENING, idAt, type LogScene, type LogSitting } from "./any-log.ts";
import { starPair } from "./night-sky.ts";
import { addLearner, contextOn, type StoreDatabase, type TestContext } from "./store-database.ts";

/** A box, and what entries about it need to know. */
export interface BoxScene extends LogScene {
  readonly context: TestContext;
  /** The chart with which it was set up. */
  readonly chart: Chart;
}

/** What a scene is made of. */
interface ScenePlan {
  readonly chart: Chart;
  readonly stars: number;
  readonly evenings: number;
  /** Charts to which the box changes, each in the hour before the next evening; null for none. */
  readonly changes?: readonly (Chart | null)[];
}

/** How long before an evening the chart is changed. */
const HOUR_MS = 3_600_000;

let worlds = 0;

/**
 * Sets up a box of its own learner with two cards for each of `stars` facts, and begins a sitting on each of
 * `evenings` evenings in a row (the chart goes on, so they have the box days 1, 2, 3 ...). The clock then
 * stands in the week after the last one.
 */
export async function setUpScene(
  database: StoreDatabase,
  { chart, stars, evenings, changes = [] }: ScenePlan,
): Promise<BoxScene> {
  const world = ++worlds;
  const learner = `guide ${world}`;
  await addLearner(database, learner);
  const context = contextOn(await database.open(learner));
  const subject = `sky ${world}`;
  await addSubject(context, subject, "The night sky");
  const facts = Array.from({ length: stars }, (_, n) => `${world} star ${n}`);
  for (const [n, fact] of facts.entries()) await addFact(context, fact, subject, starPair(n));
  const { id: box } = await setUpBox(context, { timeZone: "Europe/Lisbon", chart });
  await changeSettings(context, { policy: "chart-goes-on" });
  const sittings: LogSitting[] = [];
  for (let i = 0; i < evenings; i++) {
    const change = changes[i - 1];
    context.now = FIRST_EVENING + i * DAY_MS - HOUR_MS;
    if (change) await changeChart(context, { chart: change });
    context.now = FIRST_EVENING + i * DAY_MS;
    const { plan } = await beginSitting(context, idAt(i, 0, world), 10);
    sittings.push({ id: plan.sitting, day: plan.day });
  }
  context.now = FIRST_EVENING + (evenings + 3) * DAY_MS;
  const cards = facts.flatMap((fact) => [cardId(fact, "forward"), cardId(fact, "reverse")]);
  return { world, context, chart, box, cards, sittings };
}

/** Everything in the log of a scene, in order. */
export const wholeLog = ({ context, box }: BoxScene): Promise<readonly LogEntry[]> =>
  context.store.read(async ({ boxes }) => {
    const entries: LogEntry[] = [];
    for await (const entry of boxes.eachEntry(box)) entries.push(entry);
    return entries;
  });

/** Every card's stored place. */
export const storedPlaces = ({ context, box, cards }: BoxScene) =>
  context.store.read(async ({ boxes }) => {
    const placements = await boxes.placements(box, cards);
    return new Map(placements.map((one) => [one.card, one.state]));
  });
