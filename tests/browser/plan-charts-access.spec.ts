// The charts of the Plan page for every reader: accessibility in both themes, at 360 pixels, at twice the size, by keyboard.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, expect, type Page, test } from "@playwright/test";
import { chartChoice, openCharts, part } from "../support/charts-page.ts";
import { longhold, type ServerProcess, serve } from "../support/program.ts";

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

async function openEverything(page: Page): Promise<void> {
  await openCharts(page, server.url);
  await chartChoice(page, "Plain chart").check();
  await part(page, "design").getByRole("button", { name: "Find a chart" }).click();
  await expect(part(page, "design").getByRole("button", { name: "Plan with this chart" })).toBeVisible();
  await part(page, "ladders").getByRole("button", { name: "Find ladders" }).click();
  await expect(part(page, "ladders").getByRole("table")).toBeVisible({ timeout: 60_000 });
  await part(page, "sideBySide").getByText("Day by day").first().click();
  await part(page, "change").getByText("The 60 days in figures").click();
}

async function withPage(browser: Browser, options: object, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ reducedMotion: "reduce", ...options });
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on("pageerror", (error) => trouble.push(error.message));
  page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
  await work(page);
  expect(trouble).toEqual([]);
  await context.close();
}

const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

for (const colorScheme of ["light", "dark"] as const) {
  test(`charts: nothing for axe to find, ${colorScheme}`, ({ browser }) =>
    withPage(browser, { colorScheme, viewport: { width: 1280, height: 800 } }, async (page) => {
      await openEverything(page);
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
      expect(await overflow(page)).toBe(0);
    }));
}

test("charts: nothing sticks out at 360 pixels, and buttons are large enough for a thumb", ({ browser }) =>
  withPage(browser, { viewport: { width: 360, height: 740 }, hasTouch: true }, async (page) => {
    await openEverything(page);
    expect(await overflow(page)).toBe(0);
    const small = await page.locator("button:visible, summary:visible, .chart-choice:visible").evaluateAll((all) =>
      all
        .map((one) => ({ name: one.textContent, box: one.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 44 || box.width < 30)
        .map(({ name, box }) => `${name} ${Math.round(box.width)}×${Math.round(box.height)}`),
    );
    expect(small).toEqual([]);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
  }));

test("charts: a reader at twice the size loses nothing sideways", ({ browser }) =>
  // 200 % zoom of a 1280-pixel window is a window of 640 CSS pixels.
  withPage(browser, { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 }, async (page) => {
    await openEverything(page);
    expect(await overflow(page)).toBe(0);
  }));

test("a chart is chosen, looked at, designed and given to the box by keyboard", ({ browser }) =>
  withPage(browser, {}, async (page) => {
    await openCharts(page, server.url);
    await chartChoice(page, "Your chart").focus();
    await page.keyboard.press("ArrowRight");
    await expect(chartChoice(page, "Plain chart")).toBeChecked();
    await expect(chartChoice(page, "Plain chart")).toBeFocused();
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("region", { name: /, day by day$/ })).toBeVisible();
    await part(page, "design").getByLabel("Tabs at most").focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await expect(part(page, "design").getByText(/^19 tabs keep the worst day/)).toBeVisible();
    await part(page, "change").getByRole("button", { name: "Use this chart for my box" }).press("Enter");
    await expect(page.getByRole("dialog")).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(page.getByRole("button", { name: "Use this chart for my box" })).toBeFocused();
  }));
