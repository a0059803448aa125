// The two-way journey: a sitting on the screen, the next on paper and entered by numbers, the third from a photo of its
// sheet, the fourth on the screen again. One log, one placement.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { PaperDayView, TodayView } from "../../src/app/views.ts";
import { printedNumber } from "../../src/core/cards/card-number.ts";
import { SHEETS, type Size } from "../../src/core/kit/paper.ts";
import { CONSTELLATIONS } from "../../src/demo/sky/sky-tables.ts";
import { EVERYDAY, isMeant, makePhoto } from "../support/paper-photo/made-photo.ts";
import { printSheet } from "../support/paper-photo/printed-sheet.ts";
import { api, longhold } from "../support/program.ts";
import { type ClockServer, startClockServer } from "../support/test-clock.ts";

const DAY_MS = 86_400_000;
const SATURDAY = Date.UTC(2026, 2, 14, 19, 0);

let folder: string;
let server: ClockServer;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-paper-"));
  server = await startClockServer(folder, SATURDAY);
});

test.afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function onDay(page: Page, day: number, path = ""): Promise<void> {
  server.setTime(SATURDAY + day * DAY_MS);
  await page.clock.setFixedTime(SATURDAY + day * DAY_MS);
  await page.goto(server.url + path);
}

async function sitToTheEnd(page: Page): Promise<void> {
  const root = page.locator("[data-step]");
  for (;;) {
    await root.waitFor();
    const step = (await root.getAttribute("data-step")) ?? "";
    if (step === "done") return;
    await page.locator(".sitting-foot .primary:enabled").waitFor();
    await page.keyboard.press("Space");
    if (step === "look") continue;
    await page.getByRole("button", { name: "Recalled" }).waitFor();
    await page.keyboard.press("ArrowRight");
    await expect(page.getByRole("button", { name: "Recalled" })).toHaveCount(0);
  }
}

const paper = async (): Promise<PaperDayView> => (await api<PaperDayView>(server.url, "GET", "/api/paper")).body;
const dueNumbers = async (): Promise<readonly number[]> => (await paper()).piles.flatMap((pile) => pile.numbers);

test.setTimeout(60_000);

test("screen, paper by numbers, paper by photo, screen: one box", async ({ page }) => {
  const subject = (await api<{ id: string }>(server.url, "POST", "/api/subjects", { name: "Night sky" })).body.id;
  const list = CONSTELLATIONS.slice(0, 12)
    .map(({ name, abbreviation }) => `Abbreviation of ${name}\t${abbreviation}`)
    .join("\n");
  const form = new FormData();
  form.set("list", `prompt\tanswer\n${list}`);
  const { id } = (await (await fetch(`${server.url}/api/imports`, { method: "POST", body: form })).json()) as {
    id: string;
  };
  await api(server.url, "POST", `/api/imports/${id}/accept`, { choices: {}, subject: { id: subject }, oneWay: false });
  await expect
    .poll(async () => (await api<{ state: string }>(server.url, "GET", `/api/imports/${id}`)).body.state)
    .toBe("done");
  await api(server.url, "POST", "/api/box", { timeZone: "Europe/Lisbon", newPerDay: 6 });

  // On the screen.
  await onDay(page, 0);
  await page.getByRole("button", { name: "Begin sitting" }).click();
  await sitToTheEnd(page);
  await expect(page.getByRole("heading", { name: "Sitting finished" })).toBeVisible();

  // On paper, entered by numbers.
  await onDay(page, 1);
  await page.getByRole("link", { name: "Enter paper results" }).click();
  const due = await dueNumbers();
  expect(due).toHaveLength(6);
  const [missed = 0] = due;
  const right = printedNumber(missed);
  const field = page.getByRole("textbox", { name: "All recalled except" });
  await field.fill(`${right.slice(0, -1)}${(Number(right.at(-1)) + 1) % 10}`);
  await expect(page.getByRole("alert")).toContainText("is no card number");
  await page.getByRole("button", { name: `${right} instead` }).press("Enter");
  await expect(field).toHaveValue(right);
  await page.getByRole("button", { name: "All of them" }).press("Enter");
  await expect(
    page.getByText(
      "5 recalled cards move on, 1 missed card goes back to compartment 1, 6 new cards come into the box.",
    ),
  ).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
  await page.getByRole("button", { name: "Record these results" }).press("Enter");
  await expect(
    page.getByText("Sunday 15 March is recorded from paper, with 6 cards asked and 6 new cards."),
  ).toBeVisible();
  // Taken back after a reload, and entered again.
  await page.reload();
  await page.getByRole("button", { name: "Take back", exact: true }).click();
  await expect.poll(dueNumbers).toEqual(due);
  await field.fill(right);
  await page.getByRole("button", { name: "All of them" }).click();
  await page.getByRole("button", { name: "Record these results" }).click();
  await expect.poll(async () => (await paper()).undo?.asked).toBe(6);

  // On paper, entered from a photo of the sheet.
  await onDay(page, 2, "/paper");
  const view = await paper();
  const box = (await api<TodayView>(server.url, "GET", "/api/today")).body.box?.id ?? "";
  const piles = view.piles.map((pile) => ({ title: `Compartment ${pile.compartment}`, numbers: pile.numbers }));
  const pages = await printSheet(piles, { box, date: view.date, day: view.day }, SHEETS.a4 as Size);
  const marks = { meant: 0.3, leftOut: 0, unmeant: 0 };
  const lens = { ...EVERYDAY.lens, noise: [0.5, 1.5] } as const;
  const photo = await makePhoto(11, pages, { ...EVERYDAY, frames: [[1800, 1350]], lens, marks, habits: ["cross"] });
  const meant = photo.page.boxes.flatMap(({ number }, i) =>
    number !== null && isMeant(photo.marks[i] as never) ? [printedNumber(number)] : [],
  );
  expect(meant.length).toBeGreaterThan(0);
  await page.getByText("Read a photo of the sitting sheet").click();
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "sheet.jpg", mimeType: "image/jpeg", buffer: Buffer.from(photo.jpeg) });
  const accept = page.getByRole("button", { name: "Take these results" });
  const question = page.getByRole("heading", { name: /^Please look: / });
  for (;;) {
    await accept.or(question).or(page.locator(".photo-reader").getByRole("alert")).first().waitFor();
    if (await accept.isVisible()) break;
    expect(await page.locator(".photo-reader").getByRole("alert").allTextContents()).toEqual([]);
    // A doubtful box, shown enlarged.
    const asked = await question.textContent({ timeout: 1_000 });
    const label = await page.getByRole("img", { name: /^Enlarged: / }).getAttribute("aria-label");
    await page.keyboard.press(meant.includes(/card (\S+)$/.exec(label ?? "")?.[1] ?? "") ? "m" : "r");
    await expect(page.getByText(asked ?? "", { exact: true })).toHaveCount(0);
  }
  await accept.click();
  await expect.poll(async () => (await field.inputValue()).split(", ").sort()).toEqual([...meant].sort());
  expect((await paper()).undo?.dates).not.toEqual([view.date]);
  await page.getByRole("button", { name: "Record these results" }).click();
  await expect(page.getByText("Monday 16 March is recorded from paper")).toBeVisible();

  // On the screen again.
  await onDay(page, 3);
  const { body: today } = await api<TodayView>(server.url, "GET", "/api/today");
  expect(today.due).toBeGreaterThan(0);
  await page.getByRole("button", { name: "Begin sitting" }).click();
  await sitToTheEnd(page);
  await expect(page.getByRole("heading", { name: "Sitting finished" })).toBeVisible();
  await server.stop();
  const report = JSON.parse((await longhold("rebuild", "--data", server.data, "--json")).stdout) as {
    differences: unknown[];
    sittings: number;
  };
  expect(report.differences).toEqual([]);
  // Screen, paper (taken back), paper, photo, screen.
  expect(report.sittings).toBe(5);
  await server.start();
});

test("several days on paper are one step, and a day before those on record is placed as if entered then", async ({
  page,
}) => {
  const [fourth, fifth, sixth] = ["Wednesday 18 March", "Thursday 19 March", "Friday 20 March"];
  await onDay(page, 7, "/paper");
  const before = await paper();
  const which = page.getByRole("combobox", { name: "Which day" });
  await which.selectOption({ label: fourth });
  const missed = page.getByRole("textbox", { name: "All recalled except" });
  await missed.waitFor();
  const on = async (date: string, days: readonly object[] = []): Promise<PaperDayView> =>
    (await api<PaperDayView>(server.url, "POST", "/api/paper/day", { date, before: days })).body;
  const [slip = 0] = (await on("2026-03-18")).piles.flatMap((pile) => pile.numbers);
  await missed.fill(printedNumber(slip));
  await expect(page.getByText("1 missed card goes back to compartment 1")).toBeVisible();
  const next = page.getByRole("button", { name: "And the next day" });
  await expect(next).toBeEnabled();
  await next.press("Enter");
  await expect(which).toHaveValue("2026-03-19");
  await expect(next).toBeFocused();
  // The card that was missed the day before is among those of this day.
  await missed.fill(printedNumber(slip));
  const outcomes = page.locator(".paper-outcome li");
  await expect(outcomes).toHaveCount(2);
  await expect(outcomes.last()).toContainText(`${fifth}: `);
  await expect(outcomes.last()).toContainText("1 missed card goes back");
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
  // Back and forth loses nothing that was typed.
  await page.getByRole("button", { name: "Back to the day before" }).press("Enter");
  await expect(which).toHaveValue("2026-03-18");
  await expect(missed).toHaveValue(printedNumber(slip));
  await expect(next).toBeEnabled();
  await next.press("Enter");
  await expect(which).toHaveValue("2026-03-19");
  await expect(missed).toHaveValue(printedNumber(slip));
  // Nor does going away by mistake.
  await page.getByRole("link", { name: "Plan", exact: true }).click();
  await page.getByRole("button", { name: "Stay" }).click();
  await expect(missed).toHaveValue(printedNumber(slip));
  const record = page.getByRole("button", { name: "Record 2 days" });
  await expect(record).toBeEnabled();
  await record.press("Enter");
  await expect(page.getByText(`2 days from ${fourth} to ${fifth} are recorded from paper`)).toBeVisible();
  await page.getByRole("button", { name: "Take back", exact: true }).press("Enter");
  await expect.poll(async () => (await paper()).piles).toEqual(before.piles);
  await which.selectOption({ label: fourth });
  await missed.fill(printedNumber(slip));
  await next.click();
  await expect(which).toHaveValue("2026-03-19");
  await record.click();
  await expect.poll(async () => (await paper()).undo?.dates).toEqual(["2026-03-18", "2026-03-19"]);

  // The seventh day on the screen, and then the sixth, which was on paper.
  await onDay(page, 7);
  await page.getByRole("button", { name: "Begin sitting" }).click();
  await sitToTheEnd(page);
  await expect(page.getByRole("heading", { name: "Sitting finished" })).toBeVisible();
  await onDay(page, 8, "/paper");
  const today = await paper();
  await which.selectOption({ label: sixth });
  await expect(page.getByText("Later days have answers already.")).toBeVisible();
  await expect(page.getByText(/answers? of (a )?later days? no longer counts?/)).toBeVisible();
  await page.getByRole("button", { name: "Record these results" }).click();
  await expect(page.getByText(`${sixth} is recorded from paper`)).toBeVisible();
  await page.getByRole("button", { name: "Take back", exact: true }).click();
  await expect.poll(async () => (await paper()).undo).toBeNull();
  expect((await paper()).piles).toEqual(today.piles);
  await server.stop();
  const { stdout } = await longhold("rebuild", "--data", server.data, "--json");
  expect((JSON.parse(stdout) as { differences: unknown[] }).differences).toEqual([]);
  await server.start();
});

test("recording twice at once records once, and another window says why it cannot and what is left", async ({
  page,
  context,
}) => {
  await onDay(page, 10, "/paper");
  const other = await context.newPage();
  await onDay(other, 10, "/paper");
  const record = page.getByRole("button", { name: "Record these results" });
  const late = other.getByRole("button", { name: "Record these results" });
  await expect(late).toBeEnabled();
  await expect(record).toBeEnabled();
  const sent: string[] = [];
  page.on("request", (request) => sent.push(`${request.method()} ${new URL(request.url()).pathname}`));
  const refused: number[] = [];
  page.on("response", (response) => refused.push(...(response.ok() ? [] : [response.status()])));
  await record.evaluate((button: HTMLButtonElement) => {
    button.click();
    button.click();
  });
  await expect(page.getByText("Tuesday 24 March is recorded from paper")).toBeVisible();
  await expect(page.getByText("Recorded: Tuesday 24 March.")).toBeVisible();
  expect(sent.filter((one) => one === "POST /api/paper")).toHaveLength(1);
  expect(refused).toEqual([]);
  await late.click();
  await expect(other.getByRole("alert")).toContainText("was not due on 2026-03-24");
  await expect(other.getByText("Everything that was due on Tuesday 24 March is recorded already.")).toBeVisible();
  await page.getByRole("button", { name: "Take back", exact: true }).click();
  await expect.poll(async () => (await paper()).undo?.dates).not.toEqual(["2026-03-24"]);
});
