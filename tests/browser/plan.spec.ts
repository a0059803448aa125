// The Plan page on the demo's box: what its workers say is what the core says, everything goes by keyboard, nothing
// touches the box until it is saved, and what is saved can be undone.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, type Download, expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import type { PlanView } from "../../src/app/views.ts";
import { addDays } from "../../src/core/calendar/local-date.ts";
import { affordablePace } from "../../src/core/load/affordable-pace.ts";
import { datedDays } from "../../src/core/load/dated-days.ts";
import { planDeadline } from "../../src/core/load/deadline.ts";
import { type PlanDay, planLoad, toBoxDays } from "../../src/core/load/plan-load.ts";
import { recallBy } from "../../src/web/plan/charts/by-chart.ts";
import { draftOf, type PlanDraft, posteriorOf, questionOf } from "../../src/web/plan/plan-draft.ts";
import { readyWords } from "../../src/web/plan/ready/ready-words.ts";
import { dayWords, meanWords, worstWords } from "../../src/web/plan/year/year-words.ts";
import { counted, fullDate } from "../../src/web/words.ts";
import { api, longhold, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-plan-"));
  expect((await longhold("demo", "--data", folder)).status).toBe(0);
  server = await serve(folder);
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

const SIZES = { desktop: { width: 1280, height: 800 }, phone: { width: 360, height: 740 } } as const;

const planView = async (): Promise<PlanView> => (await api<PlanView>(server.url, "GET", "/api/plan")).body;

/** The load that the core has for the box with some changes. */
function loadOf(view: PlanView, change: Partial<PlanDraft> = {}): readonly PlanDay[] {
  return planLoad(questionOf(view, { ...draftOf(view), ...change }));
}

async function withPlan(browser: Browser, options: object, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on("pageerror", (error) => trouble.push(error.message));
  page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
  await openPlan(page, server.url);
  await work(page);
  expect(trouble).toEqual([]);
  await context.close();
}

async function openPlan(page: Page, url: string): Promise<void> {
  await page.goto(`${url}/plan`);
  await expect(page.getByRole("heading", { level: 1, name: "Plan" })).toBeVisible();
  await expect(plot(page)).toHaveAttribute("aria-valuetext", /./);
}

const plot = (page: Page) => page.getByRole("slider", { name: "The load day by day" });
const lead = (page: Page) => page.locator(".plan-lead");
const slider = (page: Page, name: string) => page.getByRole("slider", { name, exact: true });

/** Bands of chance alone, so that every number is the core's own. */
const chanceAlone = (page: Page) =>
  page.getByLabel("Let the band hold what is not yet known about my recall").uncheck();

async function press(page: Page, key: string, times: number): Promise<void> {
  for (let i = 0; i < times; i++) await page.keyboard.press(key);
}

test("moving the slider by keyboard changes the sentences to what the core says, and the box stays as it is", ({
  browser,
}) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await chanceAlone(page);
    const before = loadOf(view);
    await expect(lead(page)).toHaveText(`${worstWords(before, "cards")} ${meanWords(before)}`);
    await slider(page, "New cards a day").focus();
    await press(page, "ArrowRight", 6);
    const after = loadOf(view, { schedule: { kind: "steady", each: (view.box?.newPerDay ?? 0) + 6 } });
    await expect(lead(page)).toHaveText(`${worstWords(after, "cards")} ${meanWords(after)}`);
    expect(worstWords(after, "cards")).not.toBe(worstWords(before, "cards"));
    await slider(page, "Recalled at a visit, of 100 cards").focus();
    await page.keyboard.press("ArrowLeft");
    await expect(page.getByText("Not what your box has measured.")).toBeVisible();
    expect(await planView()).toEqual(view);
    await page.getByRole("button", { name: "Back to my box" }).click();
    await expect(lead(page)).toHaveText(`${worstWords(before, "cards")} ${meanWords(before)}`);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(slider(page, "New cards a day")).toHaveValue(String((view.box?.newPerDay ?? 0) + 6));
  }));

test("the plot is read day by day with the keyboard", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await chanceAlone(page);
    const days = loadOf(view);
    const says = async (at: number): Promise<void> => {
      const day = days[at];
      if (!day) throw new Error(`no day ${at}`);
      await expect(plot(page)).toHaveAttribute("aria-valuetext", dayWords(day, "cards"));
      await expect(page.locator(".plot-words").first()).toHaveText(dayWords(day, "cards"));
    };
    await plot(page).focus();
    await page.keyboard.press("Home");
    await says(0);
    await press(page, "ArrowRight", 5);
    await says(5);
    await page.keyboard.press("End");
    await says(days.length - 1);
    await page.keyboard.press("PageDown");
    const monthBefore = days.findLastIndex(
      ({ date }, i) => i < days.length - 1 && date.slice(8) === days.at(-1)?.date.slice(8),
    );
    await says(monthBefore);
    await page.getByLabel("Minutes", { exact: true }).check();
    await expect(plot(page)).toHaveAttribute("aria-valuetext", dayWords(days[monthBefore] as PlanDay, "minutes"));
  }));

test("the table says the same, month by month and day by day", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await chanceAlone(page);
    await page.getByText("The same as a table").first().click();
    const months = page.getByRole("table", { name: "The coming months" });
    const days = loadOf(view);
    await expect(months.getByRole("row")).toHaveCount(1 + new Set(days.map(({ date }) => date.slice(0, 7))).size);
    const month = days[40]?.date.slice(0, 7) ?? "";
    await page.getByRole("combobox", { name: "Day by day" }).selectOption(month);
    const rows = page.getByRole("table", { name: /^The days of/ }).getByRole("row");
    const those = days.filter(({ date }) => date.startsWith(month));
    await expect(rows).toHaveCount(1 + those.length);
    const sitting = those.findIndex(({ kind }) => kind === "sitting");
    const [low, high] = those[sitting]?.reviews.quantiles ?? [];
    await expect(rows.nth(1 + sitting)).toContainText(`${low} to ${high}`);
  }));

async function saved(page: Page, name: string): Promise<{ readonly file: string; readonly text: string }> {
  const download: Promise<Download> = page.waitForEvent("download");
  await page.getByRole("button", { name }).first().click();
  const file = await (await download).path();
  return { file, text: readFileSync(file, "utf8") };
}

test("the load is saved as CSV with the core's figures, and as a drawing that stands alone", ({ browser }) =>
  withPlan(browser, { colorScheme: "dark" }, async (page) => {
    const view = await planView();
    await chanceAlone(page);
    const days = loadOf(view);
    await expect(lead(page)).toHaveText(`${worstWords(days, "cards")} ${meanWords(days)}`);
    await expect(page.getByText(/^Nine days in ten lie within the band\. It shows chance alone/)).toBeVisible();
    const rows = parse((await saved(page, "Save as CSV")).text, { columns: true }) as Record<string, string>[];
    expect(rows.map((row) => row.date)).toEqual(days.map(({ date }) => date));
    expect(rows.map((row) => Number(row.cards_q95))).toEqual(days.map(({ reviews }) => reviews.quantiles[1]));
    for (const [i, row] of rows.entries()) expect(Number(row.minutes_mean)).toBeCloseTo(days[i]?.minutes.mean ?? 0, 5);
    const drawing = await saved(page, "Save as SVG");
    expect(drawing.text).not.toMatch(/class=|var\(|light-dark/);
    const alone = await page.context().newPage();
    await alone.setContent(drawing.text.replace(/^<\?xml.*\?>/, ""));
    await expect(alone.locator("svg > title")).toHaveText(/^The load of a card box/);
    await expect(alone.locator("svg > desc")).toContainText(worstWords(days, "cards"));
    const parsed = await alone.evaluate((text) => {
      const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
      const fills = [...root.querySelectorAll("path")].map((path) => path.getAttribute("fill"));
      return { name: root.nodeName, ground: root.querySelector("rect")?.getAttribute("fill"), fills };
    }, drawing.text);
    expect(parsed.name).toBe("svg");
    expect([parsed.ground, ...parsed.fills].every((fill) => /^(rgb|none|oklab|color)/.test(fill ?? ""))).toBe(true);
  }));

test("what can be afforded is what the core finds, and it can be planned with", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await page.getByRole("spinbutton", { name: "Minutes a day", exact: true }).fill("40");
    await page.getByLabel("on 90 days in 100").check();
    const question = questionOf(view, draftOf(view));
    const dates = datedDays(question);
    const limit = { minutes: 40, level: 0.9, pace: view.pace };
    const found = affordablePace(
      (each) => toBoxDays({ ...question, schedule: { kind: "steady", each } }, dates),
      limit,
    );
    const date = dates.find(({ day }) => day === found.worst?.day)?.date ?? "";
    const answer = page.locator("section", { has: page.getByRole("heading", { name: "What can I afford?" }) });
    await expect(answer.locator(".answer")).toHaveText(
      `${counted(found.each, "new card")} a day. The busiest day is then ${fullDate(date)}, at most ${counted(found.minutes, "minute")} on 90 days in 100.`,
    );
    await page.getByRole("button", { name: `Plan with ${found.each}`, exact: true }).click();
    await expect(slider(page, "New cards a day")).toHaveValue(String(found.each));
    await expect(page.getByText(`The plan above has ${counted(found.each, "new card")} a day.`)).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(slider(page, "New cards a day")).toHaveValue(String(view.box?.newPerDay));
  }));

test("ready by a date is what the core finds, with its curve, and it can be planned with", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    const by = addDays(view.from, 70);
    await page.getByLabel("The day on which they are wanted").fill(by);
    await page.getByRole("spinbutton", { name: "New cards to know" }).fill("150");
    await page.getByRole("spinbutton", { name: "At most minutes a day" }).fill("25");
    const question = questionOf(view, draftOf(view));
    const limit = { minutes: 25, level: 0.95, pace: view.pace };
    const posterior = posteriorOf(view, draftOf(view));
    const found = planDeadline({ ...question, posterior, by, cards: 150, limit });
    const panel = page.locator("section", { has: page.getByRole("heading", { name: "Ready by a date" }) });
    await expect(panel.locator(".answer p").first()).toHaveText(readyWords(found, { by, cards: 150 })[0] ?? "");
    await expect(panel.getByText("The range holds chance and what is not yet known about your recall.")).toBeVisible();
    await panel.getByText("The same as a table").click();
    await expect(panel.getByRole("row")).toHaveCount(1 + found.curve.length);
    const curve = panel.getByRole("slider", { name: "Last day of new cards" });
    await curve.focus();
    await page.keyboard.press("Home");
    await expect(curve).toHaveAttribute(
      "aria-valuetext",
      new RegExp(`^Last new cards on ${fullDate(found.curve[0]?.last ?? "")}`),
    );
    await panel.getByRole("button", { name: new RegExp(`^Plan with ${found.best.each} a day until`) }).click();
    await expect(slider(page, "New cards a day")).toHaveValue(String(found.best.each));
    await page.getByText("New cards by weekday, until a date, or day by day").click();
    await expect(page.getByLabel("Last day for new cards")).toHaveValue(found.best.last ?? "");
    await expect(page.getByText("Your box has one number for every day, so this stays a plan.")).toBeVisible();
  }));

test("new cards day by day and recall by compartment are planned with, and left again", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    await chanceAlone(page);
    const view = await planView();
    await page.getByText("New cards by weekday, until a date, or day by day").click();
    const list = page.getByLabel("A number for each practice day from now on");
    await list.fill("30, 30, many");
    await expect(page.getByText("Write up to 366 whole numbers")).toBeVisible();
    await list.fill("30, 30, 0, 25");
    const schedule = { kind: "list", each: [30, 30, 0, 25] } as const;
    const load = loadOf(view, { schedule });
    await expect(lead(page)).toHaveText(`${worstWords(load, "cards")} ${meanWords(load)}`);
    await expect(
      page.getByText("85 new cards on the next 4 practice days, day by day; none after that."),
    ).toBeVisible();
    await page.getByText("Recall by compartment").click();
    await page.getByLabel("A different recall in each compartment").check();
    const first = page.getByRole("spinbutton", { name: "Compartment 1", exact: true });
    await first.fill("60");
    const others = recallBy(view, null, draftOf(view).chart).slice(1);
    const recall = [0.6, ...others.map((chance) => Math.round(100 * chance) / 100)];
    const lower = loadOf(view, { schedule, recall });
    await expect(lead(page)).toHaveText(`${worstWords(lower, "cards")} ${meanWords(lower)}`);
    await expect(page.getByText("Recall is planned by compartment;")).toBeVisible();
    await page.getByLabel("A different recall in each compartment").uncheck();
    await expect(slider(page, "Recalled at a visit, of 100 cards")).toBeVisible();
    await page.getByRole("button", { name: "30 new cards every day instead" }).click();
    await expect(slider(page, "New cards a day")).toHaveValue("30");
    await expect(list).toHaveValue("");
    await page.getByRole("button", { name: "Back to my box" }).click();
    await expect(page.getByText("This is your box as it stands.")).toBeVisible();
  }));

test("a new pace is saved and undone", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const before = (await planView()).box?.newPerDay ?? 0;
    await expect(page.getByText("This is your box as it stands.")).toBeVisible();
    await page.getByRole("spinbutton", { name: "New cards a day", exact: true }).fill("14");
    await page.getByRole("button", { name: "Use 14 new cards a day" }).click();
    await expect(page.getByText("Your box now has 14 new cards a day.")).toBeVisible();
    expect((await planView()).box?.newPerDay).toBe(14);
    await expect(page.getByText("This is your box as it stands.")).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(page.getByText("The box is as it was.")).toBeVisible();
    expect((await planView()).box?.newPerDay).toBe(before);
    await expect(slider(page, "New cards a day")).toHaveValue(String(before));
  }));

/** The calendar's button for a day. */
const dayButton = (page: Page, date: string) => page.locator(`[data-date="${date}"]`);

test("rest days are pressed on the calendar by keyboard, change the load at once, are saved and undone", ({
  browser,
}) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await chanceAlone(page);
    const practice = loadOf(view).filter(({ kind, date }) => kind === "sitting" && date > addDays(view.from, 8));
    const first = practice.find(({ date }) => !date.endsWith("-01"))?.date ?? "";
    await dayButton(page, addDays(first, -1)).focus();
    await page.keyboard.press("ArrowRight");
    await expect(dayButton(page, first)).toBeFocused();
    await page.keyboard.press("Enter");
    await expect(dayButton(page, first)).toHaveAttribute("aria-pressed", "true");
    // With Shift the days between follow, and neighbours become one range.
    await dayButton(page, addDays(first, 4)).click({ modifiers: ["Shift"] });
    const range = { from: first, to: addDays(first, 4) };
    const rested = loadOf(view, { restDates: [...view.calendar.restDates, range] });
    await expect(lead(page)).toHaveText(`${worstWords(rested, "cards")} ${meanWords(rested)}`);
    expect(await planView()).toEqual(view);
    await page.getByRole("button", { name: "Save rest days" }).click();
    await expect(page.getByText("Rest days saved.")).toBeVisible();
    expect((await planView()).calendar.restDates).toEqual([...view.calendar.restDates, range]);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(dayButton(page, first)).toHaveAttribute("aria-pressed", "false");
    expect((await planView()).calendar.restDates).toEqual(view.calendar.restDates);
  }));

test("a weekday is rested on by its name, and one of its days says so", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    const sunday = loadOf(view).find(({ kind }) => kind === "rest")?.date ?? "";
    expect(view.calendar.restWeekdays).toEqual([7]);
    await dayButton(page, sunday).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByText(/^You rest every Sunday/)).toBeVisible();
    await page.getByRole("button", { name: "Rest on every Sunday" }).last().click();
    await expect(dayButton(page, sunday)).toHaveAttribute("aria-pressed", "false");
    await page.getByRole("button", { name: "Leave them as they were" }).click();
    await expect(dayButton(page, sunday)).toHaveAttribute("aria-pressed", "true");
    await page.getByRole("button", { name: "Show all twelve months" }).click();
    await expect(page.getByRole("grid")).toHaveCount(12);
  }));

test("missed days are tried under both policies, and the plan is pinned beside another", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await page.getByRole("button", { name: "Pin this to compare" }).click();
    await page.getByText("What if I miss some days?").click();
    await page.getByLabel("I miss every day from").fill(addDays(view.from, 20));
    await page.getByLabel("to (the same day if left out)", { exact: true }).first().fill(addDays(view.from, 34));
    const missed = Array.from({ length: 15 }, (_, i) => addDays(view.from, 20 + i));
    for (const policy of ["chart-waits", "chart-goes-on"] as const) {
      const days = loadOf(view, { missed, policy });
      const back = days.find(({ kind }, i) => i > 34 && kind === "sitting");
      await expect(page.getByText(`about ${counted(back?.reviews.mean ?? 0, "card")} and`).first()).toBeVisible();
    }
    await expect(page.getByText("pinned: 8 new cards a day")).toBeVisible();
    await expect(page.getByText(/than in the pinned plan\.|as much as in the pinned plan\./)).toBeVisible();
    await page.getByRole("button", { name: "The chart goes on", exact: true }).click();
    await expect(page.getByRole("button", { name: "Use “The chart goes on”" })).toBeVisible();
    expect((await planView()).calendar.policy).toBe("chart-waits");
    await page.getByRole("button", { name: "Take the pinned plan away" }).click();
    await expect(page.getByText("pinned: 8 new cards a day")).toHaveCount(0);
  }));

test("the band widens once what is not known about recall is mixed in, and says so", ({ browser }) =>
  withPlan(browser, {}, async (page) => {
    const view = await planView();
    await expect(page.getByText(/It shows chance, and what is not yet known about your recall/)).toBeVisible();
    await expect(page.getByText("Still widening")).toHaveCount(0, { timeout: 60_000 });
    await plot(page).focus();
    await page.keyboard.press("End");
    await page.keyboard.press("ArrowLeft");
    const words = (await plot(page).getAttribute("aria-valuetext")) ?? "";
    const [low = 0, high = 0] = (/nine times in ten (\d+) to (\d+)/.exec(words) ?? []).slice(1).map(Number);
    const [least = 0, most = 0] = loadOf(view).at(-2)?.reviews.quantiles ?? [];
    expect(low).toBeLessThan(least);
    expect(high).toBeGreaterThan(most);
  }));

/** Opens whatever is folded away. */
async function unfold(page: Page): Promise<void> {
  for (const summary of ["New cards by weekday, until a date, or day by day", "What if I miss some days?"])
    await page.getByText(summary).click();
  for (const table of await page.getByText("The same as a table").all()) await table.click();
  await page.getByRole("button", { name: "Pin this to compare" }).click();
}

for (const [size, viewport] of Object.entries(SIZES)) {
  for (const colorScheme of ["light", "dark"] as const) {
    test(`nothing for axe to find, ${size}, ${colorScheme}`, ({ browser }) =>
      withPlan(browser, { viewport, colorScheme, reducedMotion: "reduce" }, async (page) => {
        await expect(page.getByRole("heading", { name: "The trade-off" })).toBeVisible();
        await unfold(page);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
      }));
  }
}

test("nothing sticks out at 360 pixels or at twice the size, and everything is large enough for a thumb", ({
  browser,
}) =>
  withPlan(browser, { viewport: SIZES.phone, reducedMotion: "reduce", hasTouch: true }, async (page) => {
    await expect(page.getByRole("heading", { name: "The trade-off" })).toBeVisible();
    await unfold(page);
    const overflow = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(await overflow()).toBe(0);
    const small = await page
      .locator("button:visible, input:not([type=checkbox], [type=radio]):visible, select:visible, summary:visible")
      .evaluateAll((all) =>
        all
          .map((one) => ({ name: one.getAttribute("aria-label") ?? one.textContent, box: one.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 44 || box.width < 30)
          .map(({ name, box }) => `${name} ${Math.round(box.width)}×${Math.round(box.height)}`),
      );
    expect(small).toEqual([]);
    // 200 % zoom of a 1280-pixel window is a window of 640 CSS pixels.
    await page.setViewportSize({ width: 640, height: 400 });
    expect(await overflow()).toBe(0);
  }));

test("work that takes long can be stopped and begun again, and work that breaks says so", async ({ page }) => {
  let hold: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    hold = resolve;
  });
  await page.route("**/task-worker*", async (route) => {
    await held;
    await route.continue();
  });
  await openPlan(page, server.url);
  const panel = page.locator("section", { has: page.getByRole("heading", { name: "What can I afford?" }) });
  await expect(panel.getByRole("progressbar")).toBeVisible();
  await panel.getByRole("button", { name: "Stop" }).click();
  await expect(panel.getByText("Not worked out.")).toBeVisible();
  hold();
  await panel.getByRole("button", { name: "Work it out" }).click();
  await expect(panel.getByText(/The busiest day is then/)).toBeVisible();
  await page.unroute("**/task-worker*");
  await page.route("**/task-worker*", (route) => route.abort());
  await panel.getByLabel("on 80 days in 100").check();
  await expect(panel.getByText("This could not be worked out.")).toBeVisible();
  await page.unroute("**/task-worker*");
  await panel.getByRole("button", { name: "Try again" }).click();
  await expect(panel.getByText(/on 80 days in 100\.$/)).toBeVisible();
});

test("a server that does not answer is said to, and asked again", async ({ page }) => {
  await page.route("**/api/plan*", (route) => route.abort());
  await page.goto(`${server.url}/plan`);
  await expect(page.getByText("Longhold is not answering. Check that it is running, then try again.")).toBeVisible();
  await page.unroute("**/api/plan*");
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(plot(page)).toBeVisible();
});

test("without a box the page plans one begun today, and saves nothing", async ({ page }) => {
  const empty = mkdtempSync(join(tmpdir(), "longhold-plan-empty-"));
  const other = await serve(empty);
  try {
    await openPlan(page, other.url);
    await expect(page.getByText("There is no box yet: this plans one begun today.")).toBeVisible();
    await expect(lead(page)).toContainText("The worst day is");
    const before = await lead(page).textContent();
    await slider(page, "New cards a day").focus();
    await press(page, "ArrowRight", 5);
    await expect(lead(page)).not.toHaveText(before ?? "");
    await expect(page.getByRole("button", { name: /^(Use|Save rest)/ })).toHaveCount(0);
    const year = page.getByRole("region", { name: "The year ahead" });
    await year.getByRole("link", { name: "Today page" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("An empty table");
    await page.getByRole("navigation", { name: "Pages" }).getByRole("link", { name: "Plan" }).click();
    // A plan under way is still there.
    await expect(slider(page, "New cards a day")).toHaveValue("15");
  } finally {
    await other.end("SIGTERM");
    rmSync(empty, { recursive: true, force: true });
  }
});
