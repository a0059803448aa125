// Every page with the demo in it: accessibility in both themes and at two sizes, keyboard, and text as text.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { type Browser, expect, type Page, test } from "@playwright/test";
import { longhold, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-pages-"));
  expect((await longhold("demo", "--data", folder)).status).toBe(0);
  server = await serve(folder);
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

const SIZES = { desktop: { width: 1280, height: 800 }, phone: { width: 360, height: 740 } } as const;

/** Ways to each page from its address; the sitting is begun by its button. */
const PAGES: readonly { name: string; open: (page: Page) => Promise<void> }[] = [
  { name: "Today", open: (page) => visit(page, "/", /chart day \d+ of 64/) },
  { name: "Workshop", open: (page) => visit(page, "/workshop", "Workshop") },
  { name: "Bring a list", open: (page) => visit(page, "/workshop/import", "Bring a list") },
  {
    name: "Many facts at once",
    open: async (page) => {
      await visit(page, "/workshop/table", "Many facts at once");
      await page.getByRole("checkbox", { name: "Choose every fact shown" }).check();
    },
  },
  { name: "Box", open: (page) => visit(page, "/box", "Box") },
  { name: "Kit", open: (page) => visit(page, "/kit", "Kit") },
  {
    name: "a fact's editor",
    open: async (page) => {
      await visit(page, "/workshop", "Workshop");
      await page.getByRole("link", { name: /Virgo/ }).first().click();
      await expect(page.getByRole("button", { name: "Save" })).toBeVisible();
    },
  },
  {
    name: "a card's history",
    open: async (page) => {
      await visit(page, "/box", "Box");
      await page.getByRole("button", { name: /^Compartment 1\b/ }).click();
      await page
        .getByRole("link")
        .filter({ hasText: /Abbreviation|Genitive|Bayer|Sun/ })
        .first()
        .click();
      await expect(page.getByRole("table")).toBeVisible();
    },
  },
  {
    name: "a card before and after it is turned",
    open: async (page) => {
      await page.goto(server.url);
      await page.getByRole("button", { name: /Begin sitting|Go on with the sitting/ }).click();
      await page.getByRole("button", { name: "Turn" }).click();
      await expect(page.getByRole("button", { name: "Recalled" })).toBeVisible();
    },
  },
];

async function visit(page: Page, path: string, heading: string | RegExp): Promise<void> {
  await page.goto(server.url + path);
  await expect(page.getByRole("heading", { level: 1, name: heading })).toBeVisible();
  await page.waitForLoadState("networkidle");
}

async function withPage(browser: Browser, options: object, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const trouble: string[] = [];
  page.on("pageerror", (error) => trouble.push(error.message));
  page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
  await work(page);
  expect(trouble).toEqual([]);
  await context.close();
}

for (const [size, viewport] of Object.entries(SIZES)) {
  for (const colorScheme of ["light", "dark"] as const) {
    for (const { name, open } of PAGES) {
      test(`${name}: nothing for axe to find, ${size}, ${colorScheme}`, ({ browser }) =>
        withPage(browser, { viewport, colorScheme, reducedMotion: "reduce" }, async (page) => {
          await open(page);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
        }));
    }
  }
}

for (const { name, open } of PAGES) {
  test(`${name}: nothing sticks out at 360 pixels, and buttons are large enough for a thumb`, ({ browser }) =>
    withPage(browser, { viewport: SIZES.phone, reducedMotion: "reduce", hasTouch: true }, async (page) => {
      await open(page);
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(overflow).toBe(0);
      const small = await page.locator("button:visible").evaluateAll((buttons) =>
        buttons
          .map((button) => ({ name: button.textContent, box: button.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 44 || box.width < 30)
          .map(({ name, box }) => `${name} ${Math.round(box.width)}×${Math.round(box.height)}`),
      );
      expect(small).toEqual([]);
    }));
}

test("a reader at twice the size loses nothing sideways", ({ browser }) =>
  // 200 % zoom of a 1280-pixel window is a window of 640 CSS pixels.
  withPage(browser, { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 }, async (page) => {
    for (const { open } of PAGES.slice(0, 4)) {
      await open(page);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
      ).toBe(0);
    }
  }));

test("the whole way from Today to an answer and back goes by keyboard", ({ browser }) =>
  withPage(browser, {}, async (page) => {
    await visit(page, "/", /chart day/);
    const begin = page.getByRole("button", { name: /Begin sitting|Go on with the sitting/ });
    for (let i = 0; i < 60 && !(await begin.evaluate((node) => node === document.activeElement)); i++)
      await page.keyboard.press("Tab");
    await expect(begin).toBeFocused();
    const outline = await begin.evaluate(
      (node) => getComputedStyle(node).outlineStyle + getComputedStyle(node).boxShadow,
    );
    expect(outline).not.toBe("nonenone");
    await page.keyboard.press("Enter");
    const table = page.locator("[data-step=visit]");
    await table.waitFor();
    const first = await table.getAttribute("data-card");
    await expect(page.getByRole("button", { name: "Turn" })).toBeEnabled();
    await page.keyboard.press("Space");
    await page.getByRole("button", { name: "Missed" }).waitFor();
    await page.keyboard.press("ArrowLeft");
    await expect(table).not.toHaveAttribute("data-card", first ?? "");
    await page.keyboard.press("Backspace");
    await expect(table).toHaveAttribute("data-card", first ?? "");
  }));

test("cards turn at once when reduced motion is asked for", ({ browser }) =>
  withPage(browser, { reducedMotion: "reduce" }, async (page) => {
    await PAGES.find((one) => one.name.startsWith("a card before"))?.open(page);
    const moving = await page.evaluate(
      () => document.getAnimations().filter((one) => Number(one.effect?.getTiming().duration) > 1).length,
    );
    expect(moving).toBe(0);
  }));

test("what looks like a program in a list is shown as text and never run", ({ browser }) =>
  withPage(browser, {}, async (page) => {
    await visit(page, "/workshop/import", "Bring a list");
    const bad = `<img src=x onerror="window.pwned=1">`;
    await page
      .getByRole("textbox")
      .first()
      .fill(`prompt\tanswer\n${bad}\t<script>window.pwned=1</script>\nBrightest star of Bootes\t\u202eArcturus`);
    await page.getByRole("button", { name: "Read the list" }).click();
    await expect(page.getByText(bad).first()).toBeVisible();
    expect(await page.evaluate(() => "pwned" in window)).toBe(false);
    await page.getByRole("button", { name: "Put this list away" }).click();
  }));
