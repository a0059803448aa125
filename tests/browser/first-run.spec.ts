// From an empty table to the closing page, and the days after: by keyboard alone, with a list from a file
// and its pictures, on a phone, through missed days and a rest day.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import sharp from "sharp";
import { CONSTELLATIONS } from "../../src/demo/sky/sky-tables.ts";
import { type ClockServer, startClockServer } from "../support/test-clock.ts";

const DAY_MS = 86_400_000;
const SATURDAY = Date.UTC(2026, 2, 14, 19, 0);
let folder: string;
let server: ClockServer;

test.beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-first-"));
  server = await startClockServer(folder, SATURDAY);
});

test.afterEach(async () => {
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function onDay(page: Page, day: number): Promise<void> {
  server.setTime(SATURDAY + day * DAY_MS);
  await page.clock.setFixedTime(SATURDAY + day * DAY_MS);
  await page.goto(server.url);
}

/** Presses Tab until the thing with the focus has this name. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 80; i++) {
    await page.keyboard.press("Tab");
    const focused = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement | null;
      return (
        at?.getAttribute("aria-label") ??
        (at as HTMLInputElement | null)?.labels?.[0]?.textContent ??
        at?.textContent ??
        ""
      );
    });
    if (name.test(focused)) return;
  }
  throw new Error(`no way to ${name} by Tab`);
}

/** Answers everything; `answer` says what happens to each card that is asked. */
async function sitToTheEnd(
  page: Page,
  answer: (step: string, n: number) => "ArrowLeft" | "ArrowRight",
): Promise<number> {
  const root = page.locator("[data-step]");
  let asked = 0;
  for (;;) {
    await root.waitFor();
    const step = (await root.getAttribute("data-step")) ?? "";
    if (step === "done") return asked;
    await page.locator(".sitting-foot .primary:enabled").waitFor();
    await page.keyboard.press("Space");
    if (step === "look") continue;
    await page.getByRole("button", { name: "Recalled" }).waitFor();
    await page.keyboard.press(answer(step, asked++));
    await expect(page.getByRole("button", { name: "Recalled" })).toHaveCount(0);
  }
}

test("a first fact, a box and a first sitting, by keyboard alone and without configuring anything", async ({
  page,
}) => {
  await onDay(page, 0);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("An empty table");
  await tabTo(page, /Write a first fact/);
  await page.keyboard.press("Enter");
  await page.getByRole("textbox", { name: "Prompt" }).waitFor();
  await page.getByRole("textbox", { name: "Prompt" }).focus();
  await page.keyboard.type("Brightest star of Lyra");
  await page.keyboard.press("Tab");
  await expect(page.getByRole("textbox", { name: "Answer" })).toBeFocused();
  await page.keyboard.type("Vega");
  // The cards follow the typing.
  await expect(page.locator(".live-cards, [aria-label*='ards']").getByText("Vega").first()).toBeVisible();
  await page.keyboard.press("Control+s");
  await expect(page.getByText("Saved").first()).toBeVisible();
  await tabTo(page, /^Today$/).catch(() => page.getByRole("link", { name: "Today" }).focus());
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Set up the box");
  await tabTo(page, /^Set up the box$/);
  await page.keyboard.press("Enter");
  await tabTo(page, /^Begin sitting/);
  await page.keyboard.press("Enter");
  expect(await sitToTheEnd(page, () => "ArrowRight")).toBe(2);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sitting finished");
  await expect(page.getByText(/15 March will ask about 2 cards/)).toBeVisible();
});

test("a list from a file in Windows-1252 with a picture, on a phone", async ({ browser }) => {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  await onDay(page, 0);
  await page.getByRole("link", { name: /Bring a list/ }).click();
  const list = join(folder, "sterne.csv");
  const rows = [
    "Frage;Antwort;Bild",
    "Hellster Stern der Leier;Wega;",
    ";Lyra;lyra.png",
    "Stern ohne Antwort;;",
    "Größter Planet;Jupiter;",
  ];
  writeFileSync(list, Buffer.from(rows.join("\r\n"), "latin1"));
  const picture = join(folder, "lyra.png");
  await sharp({ create: { width: 90, height: 60, channels: 3, background: "#0a1530" } })
    .png()
    .toFile(picture);
  await page.locator("input[type=file]").first().setInputFiles(list);
  await page.locator("input[type=file]").nth(1).setInputFiles(picture);
  await page.getByRole("button", { name: "Read the list" }).click();
  await expect(page.getByText("Größter Planet").first()).toBeVisible();
  await expect(page.getByText(/Line 4, character/)).toBeVisible();
  await page.getByLabel("Name of the new subject").fill("Der Nachthimmel");
  await page.getByRole("button", { name: /^(Save|Keep) 3 facts/ }).click();
  await expect(page.getByRole("heading", { name: /3 facts (saved|kept)/ })).toBeVisible();
  await page.getByRole("link", { name: "Look at the facts" }).click();
  await page.getByRole("link", { name: /Lyra/ }).click();
  const drawn = page.locator("img").last();
  await expect.poll(() => drawn.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBeGreaterThan(0);
  await context.close();
});

test("misses come again in the second pass, and a finger that slipped is taken back", async ({ page }) => {
  await onDay(page, 0);
  await page.getByRole("link", { name: /Bring a list/ }).click();
  await page
    .getByRole("textbox")
    .first()
    .fill("Brightest star of Lyra\tVega\nBrightest star of Aquila\tAltair\nBrightest star of Cygnus\tDeneb");
  await page.getByRole("button", { name: "Read the list" }).click();
  await page.getByLabel("Name of the new subject").fill("The night sky");
  await page.getByRole("button", { name: /^(Save|Keep) 3 facts/ }).click();
  await page.getByRole("link", { name: "Set up the box" }).click();
  await page.getByRole("button", { name: "Set up the box" }).click();
  await page.getByRole("button", { name: "Begin sitting" }).click();
  await sitToTheEnd(page, () => "ArrowRight");
  await onDay(page, 1);
  await expect(page.getByText("6 cards due, highest compartment first")).toBeVisible();
  await page.getByRole("button", { name: "Begin sitting" }).click();
  // Six visits, of which the first is missed, then that card once more.
  expect(await sitToTheEnd(page, (step, n) => (step === "visit" && n === 0 ? "ArrowLeft" : "ArrowRight"))).toBe(7);
  await expect(page.locator(".figure").filter({ hasText: "Moved up" })).toContainText("5");
  await expect(page.locator(".figure").filter({ hasText: "Sent back" })).toContainText("1");
  // Taken back twice: the second pass, then the last visit.
  await page.keyboard.press("Backspace");
  await expect(page.locator("[data-step=second]")).toBeVisible();
  await page.keyboard.press("Backspace");
  await expect(page.locator("[data-step=visit]")).toBeVisible();
  expect(await sitToTheEnd(page, () => "ArrowRight")).toBe(2);
});

test("missed days are shown with what either policy would do, and a rest day asks nothing", async ({ page }) => {
  // Twenty facts make forty cards: after three evenings of ten new ones there is still something to do every day.
  const list = CONSTELLATIONS.slice(0, 20)
    .map((one) => `Genitive of ${one.name}\t${one.genitive}`)
    .join("\n");
  await onDay(page, 0);
  await page.getByRole("link", { name: /Bring a list/ }).click();
  await page.getByRole("textbox").first().fill(list);
  await page.getByRole("button", { name: "Read the list" }).click();
  await page.getByLabel("Name of the new subject").fill("Genitives");
  await page.getByRole("button", { name: /^(Save|Keep) 20 facts/ }).click();
  await page.getByRole("link", { name: "Set up the box" }).click();
  await page.getByRole("button", { name: "Set up the box" }).click();
  for (const day of [0, 1, 2]) {
    await onDay(page, day);
    await page.getByRole("button", { name: "Begin sitting" }).click();
    await sitToTheEnd(page, () => "ArrowRight");
  }
  // Three days later the chart still stands at day 4 …
  await onDay(page, 6);
  await expect(page.getByRole("heading", { level: 1 })).toContainText("chart day 4 of 64");
  await expect(page.getByRole("heading", { name: "3 days without a sitting" })).toBeVisible();
  // … or goes on to day 7, as the person likes.
  await page.getByRole("button", { name: "The chart goes on", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("chart day 7 of 64");
  await page.getByRole("button", { name: "The chart waits", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("chart day 4 of 64");

  await page.getByText("Settings of this box").click();
  await page.getByLabel("Friday").check();
  await page.getByRole("button", { name: "Save settings" }).click();
  await expect(page.getByText("Today is a rest day")).toBeVisible();
  // The Friday that is now a rest day no longer counts as missed: Tuesday to Thursday do.
  await expect(page.getByRole("heading", { name: "3 days without a sitting" })).toBeVisible();
});

test("a list that is dropped on the page is read", async ({ page }) => {
  await onDay(page, 0);
  await page.getByRole("link", { name: /Bring a list/ }).click();
  const list = join(folder, "planets.csv");
  writeFileSync(list, "prompt,answer\r\nLargest planet,Jupiter\r\nHottest planet,Venus\r\n");
  const zone = page.getByRole("heading", { name: "Or bring a file" }).locator("xpath=ancestor::section");
  const box = await zone.locator("[class*=drop]").first().boundingBox();
  const at = { x: (box?.x ?? 0) + 30, y: (box?.y ?? 0) + 15 };
  // Only the browser itself can drop a real file.
  const browser = await page.context().newCDPSession(page);
  for (const type of ["dragEnter", "dragOver", "drop"] as const) {
    const data = { items: [], files: [list], dragOperationsMask: 1 };
    await browser.send("Input.dispatchDragEvent", { type, ...at, data });
  }
  await expect(page.getByText("planets.csv")).toBeVisible();
  await page.getByRole("button", { name: "Read the list" }).click();
  await expect(page.getByText("Hottest planet").first()).toBeVisible();
});
