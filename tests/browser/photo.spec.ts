// A sitting sheet from its photo, in a real browser: the file is decoded and read there, doubtful boxes are answered by
// key, another day's sheet is refused, and nothing leaves the device.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import sharp from "sharp";
import type { TodayView } from "../../src/app/views.ts";
import { printedNumber } from "../../src/core/cards/card-number.ts";
import { SHEETS, type Size } from "../../src/core/kit/paper.ts";
import { EVERYDAY, isMeant, type MadePhoto, makePhoto } from "../support/paper-photo/made-photo.ts";
import { printSheet } from "../support/paper-photo/printed-sheet.ts";
import { api, longhold, type ServerProcess, serve } from "../support/program.ts";

const DATE = "2026-11-26";

let folder: string;
let server: ServerProcess;
let box: string;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-photo-"));
  expect((await longhold("demo", "--data", folder)).status).toBe(0);
  server = await serve(folder);
  box = (await api<TodayView>(server.url, "GET", "/api/today")).body.box?.id ?? "";
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

const numbers = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => 318 + 7 * i);

/** A photo of the day's sheet of so many cards, with marks of every kind if `odd`. */
async function photoOf(count: number, seed: number, odd: boolean, other = {}): Promise<MadePhoto> {
  const from = { box, date: DATE, day: 70, ...other };
  const pages = await printSheet([{ title: "Compartment 1", numbers: numbers(count) }], from, SHEETS.a4 as Size);
  const marks = odd ? { meant: 0.3, leftOut: 0, unmeant: 0.2 } : { meant: 0.2, leftOut: 0, unmeant: 0 };
  const frames = [[1800, 1350]] as const;
  const habits = odd ? [] : (["cross"] as const);
  const lens = { ...EVERYDAY.lens, noise: [1, 3] } as const;
  return makePhoto(seed, pages, { ...EVERYDAY, frames, lens, marks, habits });
}

const give = (page: Page, jpeg: Uint8Array): Promise<void> =>
  page
    .locator("input[type=file]")
    .setInputFiles({ name: "sheet.jpg", mimeType: "image/jpeg", buffer: Buffer.from(jpeg) });

const missedOf = ({ page, marks }: MadePhoto): readonly string[] =>
  page.boxes.flatMap(({ number }, i) => (number !== null && isMeant(marks[i] as never) ? [printedNumber(number)] : []));

const shown = (page: Page) => page.getByRole("list", { name: "Missed cards" }).getByRole("listitem");

test("doubtful boxes are shown enlarged and answered by key; the results are what was marked", async ({ page }) => {
  const elsewhere: string[] = [];
  page.on("request", (request) => request.url().startsWith(server.url) || elsewhere.push(request.url()));
  const sent: string[] = [];
  await page.goto(`${server.url}/paper/photo?date=${DATE}`);
  page.on("request", (request) => request.method() !== "GET" && sent.push(request.url()));
  const photo = await photoOf(60, 8, true);
  await give(page, photo.jpeg);
  const question = page.getByRole("heading", { name: /^Please look: 1 of/ });
  await expect(question).toBeFocused();
  expect((await new AxeBuilder({ page }).include(".doubt").analyze()).violations).toEqual([]);
  const doubts = Number((await question.textContent())?.split(" of ")[1]);
  const meant = new Set(missedOf(photo));
  for (let at = 1; at <= doubts; at++) {
    await expect(page.getByRole("heading", { name: `Please look: ${at} of ${doubts}` })).toBeFocused();
    const label = await page.getByRole("img", { name: /^Enlarged: / }).getAttribute("aria-label");
    const number = /card (\S+)$/.exec(label ?? "")?.[1] ?? "";
    await page.keyboard.press(meant.has(number) ? "m" : "r");
  }
  await expect(page.getByText("Nothing is recorded yet.")).toBeVisible();
  expect(await shown(page).allTextContents()).toEqual([...meant]);
  expect([...sent, ...elsewhere]).toEqual([]);
  await page.getByRole("button", { name: "Take these results" }).click();
  await expect(page.getByText(`All recalled except ${[...meant].join(", ")}.`)).toBeVisible();
});

test("the sheet of another day is refused, and what is no sheet too", async ({ page }) => {
  await page.goto(`${server.url}/paper/photo?date=${DATE}`);
  await give(page, (await photoOf(12, 2, false, { date: "2026-11-25", day: 69 })).jpeg);
  await expect(page.getByRole("alert")).toContainText("This is the sheet of Wednesday 25 November");
  await give(page, (await photoOf(12, 2, false, { box: "another" })).jpeg);
  await expect(page.getByRole("alert")).toContainText("belongs to another box");
  const table = await sharp({ create: { width: 900, height: 700, channels: 3, background: "#887755" } })
    .jpeg()
    .toBuffer();
  await give(page, table);
  await expect(page.getByRole("alert")).toContainText("No sitting sheet can be seen");
  await give(page, Buffer.from("no picture"));
  await expect(page.getByRole("alert")).toContainText("not a picture");
});

test("a photo is read with any of the eight orientations that a camera writes into it", async ({ page }) => {
  await page.goto(`${server.url}/paper/photo?date=${DATE}`);
  const photo = await photoOf(6, 7, false);
  for (let orientation = 1; orientation <= 8; orientation++) {
    await give(page, await oriented(photo.jpeg, orientation));
    await expect(page.getByRole("heading", { name: "Sheet of Thursday 26 November" })).toBeVisible();
    expect(await shown(page).allTextContents()).toEqual(missedOf(photo));
    await page.getByRole("button", { name: "Throw them away" }).click();
  }
});

/** The same picture as a camera stores it that was held another way (EXIF 2.32, tag 0x0112). */
async function oriented(jpeg: Uint8Array, orientation: number): Promise<Uint8Array> {
  const turn = [0, 0, 0, 180, 180, 90, 270, 90, 90][orientation] as number;
  const turned = sharp(await sharp(jpeg).rotate(turn).toBuffer());
  // 2 and 4 are mirrored across, 5 across after the turn, 7 up and down after it.
  if (orientation === 7) turned.flip();
  if ([2, 4, 5].includes(orientation)) turned.flop();
  return turned.withMetadata({ orientation }).jpeg().toBuffer();
}
