// Seventy days with a box of 200 facts, as a person lives them: by keyboard, on the days that were not
// missed, with the browser closed and the server killed in the middle of sittings. At the end the log must
// hold exactly what was answered, and the places must be those of a box of paper.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, expect, type Page, test } from "@playwright/test";
import Database from "better-sqlite3";
import type { RebuildReport } from "../../src/app/rebuild.ts";
import { LEVELLED_CHART } from "../../src/core/chart/make-chart.ts";
import { uniform } from "../../src/core/random.ts";
import { CONSTELLATIONS } from "../../src/demo/sky/sky-tables.ts";
import { PaperPiles } from "../support/paper-piles.ts";
import { longhold } from "../support/program.ts";
import { type ClockServer, startClockServer } from "../support/test-clock.ts";

const DAYS = 70;
const DAY_MS = 86_400_000;
/** The evening of a Sunday; the clocks go forward in Lisbon four weeks later. */
const START = Date.UTC(2026, 2, 1, 19, 30);
/** Evenings on which nobody sat. */
const MISSED = new Set([12, 13, 30, 51]);
/** Evenings on which something goes wrong half way. */
const KILLED = new Set([3, 9, 22, 37, 44, 58]);
const CLOSED = new Set([5, 16, 22, 40, 63]);

/** One answer given on the screen. */
interface Given {
  readonly day: number;
  readonly card: string;
  readonly pass: "visit" | "introduction" | "second";
  readonly answer: "recalled" | "missed";
}

test.setTimeout(15 * 60_000);

test("nothing acknowledged is lost, nothing is asked twice, and the places are those of the log", async () => {
  const folder = mkdtempSync(join(tmpdir(), "longhold-70-"));
  const server = await startClockServer(folder, START);
  const desk = new Desk(server, join(folder, "browser"), test.info().project.use.launchOptions ?? {});
  try {
    await desk.open();
    await bringFacts(desk.page, server.url);
    for (let day = 0; day < DAYS; day++) if (!MISSED.has(day)) await desk.evening(day);
    await desk.close();
    await server.stop();
    await compare(server, desk.given);
  } catch (error) {
    await desk.page.screenshot({ path: test.info().outputPath("table.png") }).catch(() => undefined);
    throw new Error(`after ${desk.given.length} answers; the page said: ${desk.said.join("; ") || "nothing"}`, {
      cause: error,
    });
  } finally {
    await desk.close();
    await server.kill().catch(() => undefined);
    rmSync(folder, { recursive: true, force: true });
  }
});

/** 200 facts: every constellation's abbreviation and genitive, and planets by place, as a pasted list. */
function list(): string {
  const planets = ["Mercury", "Venus", "Earth", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune"];
  const sky = CONSTELLATIONS.flatMap((one) => [
    [`Abbreviation of ${one.name}`, one.abbreviation],
    [`Genitive of ${one.name}`, one.genitive],
  ]);
  const order = planets.flatMap((name, i) => [
    [`Planet ${i + 1} from the Sun`, name],
    [`Planets nearer to the Sun than ${name}`, String(i)],
    [`Planets farther from the Sun than ${name}`, String(7 - i)],
  ]);
  return [["prompt", "answer"], ...sky, ...order].map((row) => row.join("\t")).join("\n");
}

async function bringFacts(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByRole("link", { name: "Bring a list" }).click();
  await page.getByRole("textbox").first().fill(list());
  await page.getByRole("button", { name: "Read the list" }).click();
  await page.getByLabel("Name of the new subject").fill("The night sky");
  await page.getByRole("button", { name: /^(Save|Keep) 200 facts/ }).click();
  await page.getByRole("link", { name: "Set up the box" }).click();
  await page.getByRole("button", { name: "Set up the box" }).click();
  await expect(page.getByRole("button", { name: "Begin sitting" })).toBeVisible();
}

/** The person at the screen. */
class Desk {
  page!: Page;
  readonly given: Given[] = [];
  /** Everything that went wrong inside the page, which is nothing. */
  readonly said: string[] = [];
  private context: BrowserContext | null = null;

  constructor(
    private readonly server: ClockServer,
    private readonly profile: string,
    private readonly launch: object,
  ) {}

  async open(): Promise<void> {
    this.context = await chromium.launchPersistentContext(this.profile, {
      ...this.launch,
      timezoneId: "Europe/Lisbon",
      locale: "en-GB",
      viewport: { width: 900, height: 700 },
      reducedMotion: "reduce",
    });
    this.page = this.context.pages()[0] ?? (await this.context.newPage());
    this.page.setDefaultTimeout(20_000);
    this.page.on("pageerror", (error) => this.said.push(error.message));
  }

  async close(): Promise<void> {
    await this.context?.close();
    this.context = null;
  }

  /** One evening: sits down, answers everything, and lives through what goes wrong. */
  async evening(day: number): Promise<void> {
    const now = START + day * DAY_MS;
    this.server.setTime(now);
    if (!(await this.sitDown(now, "Begin sitting"))) return;
    const troubleAt = KILLED.has(day) || CLOSED.has(day) ? 3 + Math.floor(uniform("trouble", `${day}`) * 12) : -1;
    for (let n = 0; ; n++) {
      expect(this.said).toEqual([]);
      if (n === troubleAt && KILLED.has(day)) await this.serverDies(day);
      if (n === troubleAt + 4 && CLOSED.has(day)) {
        await this.close();
        await this.open();
        await this.sitDown(now, "Go on with the sitting");
      }
      if (!(await this.answerNext(day))) break;
    }
    await expect(this.page.getByRole("heading", { name: "Sitting finished" })).toBeVisible();
    await expect.poll(() => this.unsent()).toBe(0);
  }

  /** Opens Today and sits down; false if there is nothing to do. */
  private async sitDown(now: number, button: string): Promise<boolean> {
    await this.page.clock.setFixedTime(now);
    await this.page.goto(this.server.url);
    const begin = this.page.getByRole("button", { name: button });
    const nothing = this.page.getByRole("heading", { name: "Nothing is due today" });
    await begin.or(nothing).waitFor();
    if (await nothing.isVisible()) return false;
    await begin.click();
    await this.page.locator("[data-step]").waitFor();
    return true;
  }

  /** The server is gone for three answers, which wait in the browser, and comes back. */
  private async serverDies(day: number): Promise<void> {
    await this.server.kill();
    for (let i = 0; i < 3; i++) await this.answerNext(day);
    await this.server.start();
    await expect.poll(() => this.unsent(), { timeout: 15_000 }).toBe(0);
  }

  /** Answers the card on the table; false at the closing page. */
  private async answerNext(day: number): Promise<boolean> {
    const { step, card } = await this.page.evaluate(cardOnTheTable);
    if (step === "done") return false;
    await this.page.keyboard.press("Space");
    if (step !== "look") {
      const pass = step === "introduce" ? "introduction" : (step as Given["pass"]);
      const before = this.given.filter((one) => one.day === day && one.card === card).length;
      const answer = uniform("answers", `${day}/${card}/${before}`) < 0.88 ? "recalled" : "missed";
      this.given.push({ day, card, pass, answer });
      await this.page.evaluate(answerShown);
      await this.page.keyboard.press(answer === "recalled" ? "ArrowRight" : "ArrowLeft");
    }
    return true;
  }

  private unsent(): Promise<number> {
    return this.page.evaluate(
      () => Object.keys(localStorage).filter((key) => key.startsWith("longhold.unsent.")).length,
    );
  }
}

/**
 * Runs in the page: waits until a card can be turned, or the closing page is there. Timers look again, not
 * animation frames, which a browser without a screen may leave out.
 */
function cardOnTheTable(): Promise<{ step: string; card: string }> {
  return new Promise((resolve, reject) => {
    const until = performance.now() + 30_000;
    const look = (): void => {
      const root = document.querySelector("[data-step]");
      const step = root?.getAttribute("data-step") ?? "";
      const ready = step === "done" || document.querySelector(".sitting-foot .primary:enabled") !== null;
      if (ready) resolve({ step, card: root?.getAttribute("data-card") ?? "" });
      else if (performance.now() > until)
        reject(new Error(`no card to turn: ${document.body.textContent.slice(0, 300)}`));
      else setTimeout(look, 4);
    };
    look();
  });
}

/** Runs in the page: waits until the card is turned. */
function answerShown(): Promise<void> {
  return new Promise((resolve, reject) => {
    const until = performance.now() + 30_000;
    const look = (): void => {
      if (document.querySelector(".answer-recalled")) resolve();
      else if (performance.now() > until) reject(new Error(`no answer: ${document.body.textContent.slice(0, 300)}`));
      else setTimeout(look, 4);
    };
    look();
  });
}

/** The log against what was answered, the places against a box of paper, the cache against the replay. */
async function compare(server: ClockServer, given: readonly Given[]): Promise<void> {
  const report = JSON.parse((await longhold("rebuild", "--data", server.data, "--json")).stdout) as RebuildReport;
  expect(report.differences).toEqual([]);
  const database = new Database(join(server.data, "longhold.sqlite"), { readonly: true });
  const logged = database
    .prepare("select card_id as card, pass, answer from log where kind = 'outcome' order by id")
    .all();
  expect(logged).toEqual(given.map(({ card, pass, answer }) => ({ card, pass, answer })));
  const twice = database
    .prepare("select card_id from log where pass = 'visit' group by sitting_id, card_id having count(*) > 1")
    .all();
  expect(twice).toEqual([]);

  const paper = new PaperPiles(LEVELLED_CHART);
  const evenings = [...new Set(given.map((one) => one.day))];
  const boxDays = database.prepare("select day from sitting order by id").pluck().all() as number[];
  expect(boxDays).toHaveLength(evenings.length);
  let last = 0;
  for (const [i, evening] of evenings.entries()) {
    const day = boxDays[i] ?? 0;
    // Days of the chart that passed by themselves were days on which the paper box asks nothing either.
    for (let idle = last + 1; idle < day; idle++) expect(paper.due(idle)).toEqual([]);
    for (const one of given.filter((given) => given.day === evening)) paper.answer(one, day);
    last = day;
  }
  const places = database
    .prepare(
      "select card_id as card, place, compartment, bundle from placement where place <> 'stock' order by card_id",
    )
    .all();
  expect(places).toEqual(paper.places());
  expect(evenings.length).toBeGreaterThan(DAYS - MISSED.size - 10);
  // The sittings really met all parts of the box.
  const met = database.prepare("select distinct compartment from log where pass = 'visit' order by 1").pluck().all();
  expect(met).toEqual([1, 2, 3, 4, 5, 6]);
  expect(given.length).toBeGreaterThan(2_000);
  database.close();
}
