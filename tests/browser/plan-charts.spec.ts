// Charts on the Plan page: compared, designed, searched for, given to the box and taken back; and the calendar file.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Locator, type Page, test } from "@playwright/test";
import type { DrawerView } from "../../src/app/views.ts";
import { chartChoice, openCharts, part } from "../support/charts-page.ts";
import { api, longhold, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-charts-"));
  expect((await longhold("demo", "--data", folder)).status).toBe(0);
  server = await serve(folder);
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

test("every figure of a chart stands in a sentence, and each chart is drawn", async ({ page }) => {
  await openCharts(page, server.url);
  await expect(chartChoice(page, "Your chart")).toBeChecked();
  const own = part(page, "sideBySide")
    .getByRole("listitem")
    .filter({ has: page.getByRole("radio", { name: "Your chart" }) });
  for (const words of [
    /^18 tabs to keep apart$/,
    /^[\d,]+ cards asked on the mean day$/,
    /^[\d,]+ on the worst day, \d+\s% above the mean$/,
    /^58 days at most between two askings of a card$/,
    /^\d+ days until a card is kept, on average$/,
    /^\d+\.\d askings of a card until it is kept$/,
    /^\d+\s% of kept cards recalled a year on, as predicted$/,
  ]) {
    await expect(own.getByRole("listitem").filter({ hasText: words })).toHaveCount(1);
  }
  await expect(page.getByRole("img", { name: /^Plain chart\. From \d+ to [\d,]+ cards a day/ })).toBeVisible();
});

async function savedFrom(part: Locator, button: string): Promise<string> {
  const download = part.page().waitForEvent("download");
  await part.getByRole("button", { name: button }).click();
  return readFileSync(await (await download).path(), "utf8");
}

test("a chart is laid out day by day only when that is opened", async ({ page }) => {
  await openCharts(page, server.url);
  const days = page.getByRole("region", { name: "Your chart, day by day" });
  await expect(days).toHaveCount(0);
  await part(page, "sideBySide").getByText("Day by day").first().click();
  await expect(days.getByRole("table").nth(1).getByRole("row")).toHaveCount(65);
  // Compartment 1 is visited every day, so no day is without it.
  await expect(days.getByRole("row").filter({ hasText: "none" })).toHaveCount(0);
  const own = part(page, "sideBySide")
    .getByRole("listitem")
    .filter({ has: page.getByRole("radio", { name: "Your chart" }) });
  expect((await savedFrom(own, "Save as CSV")).trimEnd().split("\r\n")).toHaveLength(65);
  expect(await savedFrom(own, "Save as SVG")).toContain(">Your chart. From ");
});

test("a chart is designed, said to be the best, and planned with", async ({ page }) => {
  await openCharts(page, server.url);
  const design = part(page, "design");
  await design.getByRole("button", { name: "Fewer: Compartments" }).click();
  await design.getByRole("button", { name: "Fewer: Compartments" }).click();
  await design.getByLabel("Tabs at most").fill("9");
  await design.getByRole("button", { name: "Find a chart" }).click();
  await expect(design.getByRole("status").filter({ hasText: "9 tabs keep the worst day at" })).toBeVisible();
  await expect(design.getByText("every one that could was tried")).toBeVisible();
  await expect(chartChoice(page, "Designed, 9 tabs")).not.toBeChecked();
  await design.getByRole("button", { name: "Plan with this chart" }).click();
  await expect(chartChoice(page, "Designed, 9 tabs")).toBeChecked();
  await expect(part(page, "change").getByText("“Designed, 9 tabs” is only planned with")).toBeVisible();
  await part(page, "sideBySide").getByRole("button", { name: "Put away: Designed, 9 tabs" }).click();
  await expect(chartChoice(page, "Your chart")).toBeChecked();
  await expect(part(page, "change")).toHaveCount(0);
});

test("a search that cannot try everything says so, and can be stopped", async ({ page }) => {
  await openCharts(page, server.url);
  const design = part(page, "design");
  await design.getByText("Tripling").click();
  await design.getByRole("button", { name: "Find a chart" }).click();
  await expect(design.getByText(/The search was heuristic: 10,000 charts were tried, not all/)).toBeVisible({
    timeout: 60_000,
  });
  await design.getByRole("button", { name: "Look ten times as long" }).click();
  await expect(design.getByRole("progressbar", { name: "Trying charts …" })).toBeVisible();
  await design.getByRole("button", { name: "Stop" }).click();
  await expect(design.getByRole("progressbar")).toHaveCount(0);
  await expect(design.getByText(/heuristic/)).toHaveCount(0);
  await expect(design.getByRole("button", { name: "Find a chart" })).toBeEnabled();
});

test("days that cannot be a chart are named beside their field, and nothing is searched", async ({ page }) => {
  await openCharts(page, server.url);
  const design = part(page, "design");
  await design.getByText("My own days").click();
  const field = design.getByLabel("Days for compartment 1, 2, 3 …");
  await expect(field).toHaveValue("1, 2, 4, 8, 16, 32, 64");
  await field.fill("");
  await design.getByRole("button", { name: "Find a chart" }).click();
  await expect(field).toHaveAccessibleDescription(/^Write the days from visit to visit/);
  await field.fill("1, two, 4");
  await expect(field).toHaveAttribute("aria-invalid", "true");
  await expect(field).toHaveAccessibleDescription(
    "“two” is not a whole number of days. Write numbers such as 1, 2, 4, 8.",
  );
  await field.fill("7, 11, 13, 17");
  await expect(field).toHaveAccessibleDescription(/only come round together after 17,017 days/);
  await expect(design.getByRole("progressbar")).toHaveCount(0);
  await field.fill("1, 3, 6");
  await expect(field).not.toHaveAttribute("aria-invalid");
  await design.getByRole("button", { name: "Find a chart" }).click();
  await expect(chartChoice(page, /^Designed/)).toHaveCount(1);
});

test("ladders are put in order from the keyboard and one is planned with", async ({ page }) => {
  await openCharts(page, server.url);
  const ladders = part(page, "ladders");
  await ladders.getByRole("button", { name: "Find ladders" }).click();
  const table = ladders.getByRole("table");
  await expect(table).toBeVisible({ timeout: 60_000 });
  await expect(table.getByRole("rowheader", { name: "1, 3, 9, 27, 81", exact: true })).toBeVisible();
  await expect(table.getByRole("rowheader", { name: "1, 2, 4, 8, 16, 32, 64", exact: true })).toBeVisible();
  await expect(table.getByRole("columnheader", { name: "Days until kept" })).toHaveAttribute("aria-sort", "ascending");
  const worst = table.getByRole("columnheader", { name: "Worst day, cards" });
  await worst.getByRole("button").press("Enter");
  await expect(worst).toHaveAttribute("aria-sort", "ascending");
  await worst.getByRole("button").press("Enter");
  await expect(worst).toHaveAttribute("aria-sort", "descending");
  await expect(table.locator("th[aria-sort]")).toHaveCount(1);
  const shown = await table
    .getByRole("row")
    .evaluateAll((rows) =>
      rows.slice(1).map((row) => Number((row as HTMLTableRowElement).cells[3]?.textContent?.replace(",", ""))),
    );
  expect(shown).toEqual([...shown].sort((a, b) => b - a));
  await table.getByRole("button", { name: "Plan with 1, 3, 9, 27, 81", exact: true }).press("Enter");
  await expect(chartChoice(page, "Ladder of 5, growth 3")).toBeChecked();
  await expect(page.getByText("You are planning with “Ladder of 5, growth 3” now.")).toBeVisible();
});

async function useIt(page: Page): Promise<void> {
  await part(page, "change").getByRole("button", { name: "Use this chart for my box" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Use this chart" }).click();
}

test("the box changes its chart, keeps every card, and takes it back", async ({ page }) => {
  const cards = async (): Promise<number> => {
    const { body } = await api<DrawerView>(server.url, "GET", "/api/box");
    return body.compartments.flatMap(({ bundles }) => bundles).reduce((sum, { count }) => sum + count, 0);
  };
  const total = await cards();
  await openCharts(page, server.url);
  await chartChoice(page, "Plain chart").check();
  const change = part(page, "change");
  await expect(change.getByText(`The box keeps all of its ${total} cards`)).toBeVisible();
  await expect(change.getByText(/^In the coming 60 days the heaviest asks \d+ cards as it is/)).toBeVisible();
  await expect(change.getByText(/take these out: 5·1 to 5·2, 6·1 to 6·4, 7·1 to 7·8/)).toBeVisible();
  await change.getByText("The 60 days in figures").click();
  await expect(change.getByRole("table").getByRole("row")).toHaveCount(61);
  const pair = await savedFrom(change, "Save as SVG");
  expect(pair.match(/<svg /g)).toHaveLength(3);
  expect(pair).toMatch(/>As it is: up to \d+ cards a day.*>With the new chart: up to \d+ cards a day/s);
  expect((await savedFrom(change, "Save as CSV")).trimEnd().split("\r\n")).toHaveLength(61);
  await change.getByRole("button", { name: "Use this chart for my box" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Leave it" }).click();
  await expect(change).toBeVisible();
  await useIt(page);
  const notice = page.getByRole("group", { name: "Notice" });
  await expect(notice.filter({ hasText: /The box goes by the new chart\. \d+ cards moved\./ })).toBeVisible();
  await expect(change).toHaveCount(0);
  await expect(chartChoice(page, "Your chart")).toBeChecked();
  // The chart that it had stays beside the others.
  await expect(chartChoice(page, "Levelled chart")).toBeVisible();
  expect(await cards()).toBe(total);
  await notice.getByRole("button", { name: "Undo" }).click();
  await expect(notice.filter({ hasText: "Taken back." })).toBeVisible();
  // It is planned with again, and only that.
  await expect(change).toBeVisible();
  await expect(chartChoice(page, "Plain chart")).toBeChecked();
  expect(await cards()).toBe(total);
});

test("a change of chart can still be taken back when its notice is gone", async ({ page }) => {
  await openCharts(page, server.url);
  await chartChoice(page, "Dated cards").check();
  await useIt(page);
  await expect(page.getByText(/The box goes by the new chart/)).toBeVisible();
  await openCharts(page, server.url);
  await part(page, "takeBack").getByRole("button", { name: "Take back the change" }).click();
  await expect(page.getByText("Taken back.")).toBeVisible();
  await expect(part(page, "takeBack")).toHaveCount(0);
  const { body } = await api<DrawerView>(server.url, "GET", "/api/box");
  expect(body.compartments.map(({ bundles }) => bundles.length)).toEqual([1, 1, 1, 1, 2, 4, 8]);
});

test("the calendar file is downloaded, and its address copied", async ({ page, context }) => {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await openCharts(page, server.url);
  const calendar = part(page, "calendar");
  const download = page.waitForEvent("download");
  await calendar.getByRole("link", { name: "Download the calendar file" }).click();
  const text = await readFile(await (await download).path(), "utf8");
  expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
  await calendar.getByRole("button", { name: "Copy" }).click();
  await expect(page.getByText("The address is copied.")).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toBe(await calendar.getByLabel("Address to subscribe to").inputValue());
  expect((await fetch(copied)).headers.get("content-type")).toMatch(/^text\/calendar/);
});

test("where the browser does not let pages copy, the address is selected", async ({ page }) => {
  await page.addInitScript(() => Object.defineProperty(Navigator.prototype, "clipboard", { get: () => undefined }));
  await openCharts(page, server.url);
  await part(page, "calendar").getByRole("button", { name: "Copy" }).click();
  await expect(page.getByText(/The address is selected/)).toBeVisible();
  const field = part(page, "calendar").getByLabel("Address to subscribe to");
  expect(
    await field.evaluate((one: HTMLInputElement) => one.value.slice(one.selectionStart ?? 0, one.selectionEnd ?? 0)),
  ).toBe(await field.inputValue());
});

test("without a box a chart is tried out, and the box is set up with it once there are facts", async ({ page }) => {
  const empty = mkdtempSync(join(tmpdir(), "longhold-charts-"));
  const setUp = part(page, "setUp");
  const none = await serve(empty);
  await openCharts(page, none.url);
  await expect(part(page, "calendar").getByText("There is no box yet")).toBeVisible();
  await expect(setUp.getByRole("link", { name: "Write a first fact" })).toBeVisible();
  await none.end("SIGTERM");
  await writeFile(join(empty, "list.csv"), "prompt,answer\nBrightest star of Lyra,Vega\n");
  const list = ["import", join(empty, "list.csv"), "--subject", "Night sky", "--data", empty];
  expect((await longhold(...list)).status).toBe(0);
  const fresh = await serve(empty);
  await openCharts(page, fresh.url);
  await chartChoice(page, "Plain chart").check();
  await setUp.getByRole("button", { name: "Set up my box with this chart" }).click();
  await expect(page.getByText("The box is set up.")).toBeVisible();
  await expect(chartChoice(page, "Your chart")).toBeChecked();
  const { body } = await api<DrawerView>(fresh.url, "GET", "/api/box");
  expect(body.compartments.map(({ bundles }) => bundles.length)).toEqual([1, 1, 1, 1, 1, 1, 1]);
  await fresh.end("SIGTERM");
  rmSync(empty, { recursive: true, force: true });
});
