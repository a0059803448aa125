// The kit as a person makes it: choose, look, print, say so, and print again only what changed. PDFs are read by other programs.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { unzipSync } from "fflate";
import { printedNumber } from "../../src/core/cards/card-number.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { randomBytes } from "../../src/server/random-bytes.ts";
import { readPdf } from "../support/pdf-tools.ts";
import { api, type ServerProcess, serve } from "../support/program.ts";

const STARS = [
  ["Brightest star of Lyra", "Vega"],
  ["Brightest star of Aquila", "Altair"],
  ["Brightest star of Cygnus", "Deneb"],
  ["Brightest star of Scorpius", "Antares"],
  ["Brightest star of Leo", "Regulus"],
] as const;
/** Each is asked both ways; eight cards of A7 fit on A4. */
const CARDS = 2 * STARS.length;

let folder: string;
let server: ServerProcess;
const facts: string[] = [];

test.describe.configure({ mode: "serial" });

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-kit-"));
  server = await serve(folder);
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

async function write(subject: string, prompt: string, answer: string): Promise<string> {
  const { body } = await api<{ facts: { id: string }[] }>(server.url, "POST", "/api/facts/batch", {
    subject,
    facts: [{ id: createEntryId(Date.now(), randomBytes(10)), content: { kind: "pair", prompt, answer } }],
  });
  return body.facts[0]?.id ?? "";
}

async function noAxe(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
}

/** What stands in the file behind a link, read by programs that did not make it. */
async function fetched(page: Page, link: Locator): Promise<Uint8Array> {
  const href = await link.getAttribute("href");
  return new Uint8Array(await (await page.request.get(server.url + href)).body());
}

function pagesOf(pdf: Uint8Array): readonly string[] {
  const reading = readPdf(pdf);
  reading.close();
  expect(reading.complaints).toBe("");
  return reading.pages;
}

const printButton = (page: Page) => page.getByRole("button", { name: "Print kit" });
const sheetNumber = (page: Page) => page.getByRole("textbox", { name: "Sheet", exact: true });

async function print(page: Page): Promise<Uint8Array> {
  await expect(printButton(page)).not.toHaveAttribute("aria-disabled", "true");
  await printButton(page).press("Enter");
  await expect(page.getByRole("heading", { name: /is ready/ })).toBeFocused();
  return fetched(page, page.getByRole("link", { name: "Download" }));
}

test("without cards the page says how to get some", async ({ page }) => {
  await page.goto(server.url);
  await page.getByRole("link", { name: "Kit", exact: true }).click();
  await expect(page.getByText("There are no cards yet")).toBeVisible();
  await expect(page.getByRole("link", { name: "Write a first fact" })).toHaveAttribute("href", "/workshop");
});

test("a kit is chosen, seen, printed and recorded; then only what changed is printed", async ({ page }) => {
  const { body: subject } = await api<{ id: string }>(server.url, "POST", "/api/subjects", { name: "Night sky" });
  for (const [prompt, answer] of STARS) facts.push(await write(subject.id, prompt, answer));

  // Chosen by keyboard.
  await page.goto(`${server.url}/kit`);
  await expect(page.getByText(`, ${CARDS} cards.`)).toBeVisible();
  for (const part of ["Dividers", "Wall calendar"]) await page.getByRole("checkbox", { name: part }).press("Space");
  await expect(page.getByText(`3 sheets, ${CARDS} cards.`)).toBeVisible();

  // Seen, both sides, sheet by sheet.
  const front = page.getByRole("img", { name: "Front of sheet 1" });
  await expect.poll(() => front.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);
  await expect(page.getByText("Empty", { exact: true })).toBeVisible();
  await page.getByRole("button", { name: "Next sheet" }).press("ArrowRight");
  await expect(page.getByRole("img", { name: "Back of sheet 2" })).toBeVisible();
  await page.getByRole("combobox", { name: "Part" }).selectOption("Instructions");
  await expect(sheetNumber(page)).toHaveValue("1");
  await sheetNumber(page).fill("3");
  await expect(page.getByRole("img", { name: "Back of sheet 3" })).toBeVisible();
  await page.getByRole("button", { name: "Larger" }).press("Enter");
  await expect(page.getByText("2 ×", { exact: true })).toBeVisible();

  // A size that cannot be keeps from printing, and says why.
  await page.getByRole("combobox", { name: "Card", exact: true }).selectOption("Another size");
  await page.getByRole("textbox", { name: "Card: width" }).fill("9");
  await expect(page.getByRole("alert")).toHaveText("The sides of a card are 40 to 420 mm, not 9 × 60 mm.");
  await expect(printButton(page)).toHaveAttribute("aria-disabled", "true");
  await page.getByRole("textbox", { name: "Card: width" }).fill("95");

  // Printed.
  const pages = pagesOf(await print(page));
  expect(pages).toHaveLength(6);
  expect(pages[0]).toContain("How to use this box");
  expect(pages[2]).toContain("Brightest star of Lyra");
  expect(pages[3]).toContain("Vega");
  await noAxe(page);
  await expect(page.getByText(/Scissors and knives are sharp/)).toBeVisible();
  await page.getByRole("button", { name: "These are printed" }).press("Enter");
  await expect(page.getByText(`${CARDS} paper cards are as they should be.`)).toBeVisible();
  await expect(page.getByText("Nothing needs printing: your paper is up to date.")).toBeVisible();

  // A fact is reworded: its two cards are out of date, and the page says why. Choices are found again.
  await api(server.url, "PUT", `/api/facts/${facts[0]}`, {
    content: { kind: "pair", prompt: "Brightest star of the Lyre", answer: "Vega" },
  });
  await page.reload();
  await expect(page.getByRole("link", { name: "2 paper cards are out of date." })).toBeVisible();
  await expect(page.getByRole("textbox", { name: "Card: width" })).toHaveValue("95");
  await expect(page.getByText("1 sheet, 2 cards.")).toBeVisible();
  await page.getByText("Which paper cards, and why").click();
  const row = page.getByRole("row").filter({ has: page.getByRole("link", { name: printedNumber(1) }) });
  await expect(row.locator("del")).toHaveText("Brightest star of Lyra");
  await expect(row.locator("ins")).toHaveText("Brightest star of the Lyre");
  const changed = pagesOf(await print(page));
  expect(changed).toHaveLength(2);
  expect(changed[0]).toContain("Brightest star of the Lyre");
  expect(changed[0]).not.toContain("Altair");
  await page.getByRole("button", { name: "These are printed" }).press("Enter");
  await expect(page.getByText(`${CARDS} paper cards are as they should be.`)).toBeVisible();

  // Taken back in one step.
  await page.getByRole("button", { name: "Take back: 2 cards printed" }).press("Enter");
  await expect(page.getByText(`${CARDS - 2} paper cards are as they should be; 2 changed since.`)).toBeVisible();
});

test("a lost card is recorded by its number, and its own page says so", async ({ page }) => {
  const number = 3;
  const right = printedNumber(number);
  await page.goto(`${server.url}/kit`);
  await page.getByText("Lost or damaged cards").click();
  const field = page.getByRole("textbox", { name: "Their numbers" });
  await field.fill(`${right.slice(0, -1)}${(Number(right.at(-1)) + 1) % 10}`);
  await expect(page.getByRole("alert")).toContainText("the last digit does not agree with the others");
  await expect(page.getByRole("button", { name: "Record them" })).toHaveAttribute("aria-disabled", "true");
  await field.fill(printedNumber(999));
  await field.press("Enter");
  await expect(page.getByRole("alert")).toHaveText(`No card has the number ${printedNumber(999)}.`);
  await field.fill(right);
  await field.press("Enter");
  await expect(page.getByText(`2 changed since, 1 lost.`)).toBeVisible();
  await expect(page.getByText("1 sheet, 3 cards.")).toBeVisible();

  await page.getByText("Which paper cards, and why").click();
  await page.getByRole("link", { name: right }).click();
  await expect(page.getByRole("heading", { name: `Card ${right}` })).toBeVisible();
  await expect(page.getByText("recorded as lost.")).toBeVisible();
  await page.getByRole("link", { name: "open its fact" }).click();
  await expect(page.getByRole("link", { name: "of which 1 to be printed again" })).toBeVisible();
  await page.goBack();
  await page.getByRole("link", { name: "Print it again" }).click();
  await expect(page.getByText("1 sheet, 3 cards.")).toBeVisible();
});

test("a class gets a box for each name; a kit under way is stopped", async ({ page }) => {
  await page.goto(`${server.url}/kit`);
  await page.getByText("A box for each of several people").click();
  const names = page.getByRole("textbox", { name: "Names, one a line" });
  await names.fill("Ines Duarte\nInes Duarte");
  await expect(page.getByRole("alert")).toContainText("“Ines Duarte” stands there twice");
  await names.fill("Tomás Prado\nInes Duarte");
  for (const part of ["Instructions", "Cards", "Wall calendar"])
    await page.getByRole("checkbox", { name: part, exact: false }).first().uncheck();
  await page.getByRole("radio", { name: "A zip file with a PDF for each name" }).check();
  await expect(page.getByText(/^2 boxes of \d+ sheets? each\.$/)).toBeVisible();
  const files = unzipSync(await print(page));
  expect(Object.keys(files)).toHaveLength(2);
  for (const [name, pdf] of Object.entries(files))
    expect(pagesOf(pdf)[0]).toContain(name.includes("Ines") ? "Ines Duarte" : "Tomás Prado");
  await expect(page.getByRole("button", { name: "These are printed" })).toHaveCount(0);

  // So many boxes take a while, whatever the machine.
  await names.fill(Array.from({ length: 200 }, (_, i) => `Guide ${i + 1}`).join("\n"));
  await page.getByRole("checkbox", { name: "Cards" }).first().check();
  await expect(page.getByText(/^200 boxes/)).toBeVisible();
  await printButton(page).click();
  await page.getByRole("button", { name: "Stop" }).press("Enter");
  await expect(page.getByText("Stopped: no PDF was made.")).toBeVisible();
  await expect(printButton(page)).not.toHaveAttribute("aria-disabled", "true");
});

test("on a phone in the dark nothing sticks out or jumps, and what does not fit leads to its fact", async ({
  browser,
}) => {
  const { body } = await api<{ subjects: { id: string }[] }>(server.url, "GET", "/api/subjects");
  await write(body.subjects[0]?.id ?? "", "star ".repeat(900), "too much");
  const context = await browser.newContext({
    ...{ viewport: { width: 390, height: 844 }, colorScheme: "dark", reducedMotion: "reduce", hasTouch: true },
  });
  const page = await context.newPage();
  await page.addInitScript(noteShifts);
  await page.goto(`${server.url}/kit`);
  await expect(page.getByRole("img", { name: "Front of sheet 1" })).toBeVisible();
  const shifts = await page.evaluate(() => (window as unknown as Shifting).shifts);
  expect(shifts.reduce((sum, one) => sum + one, 0)).toBeLessThan(LITTLE_SHIFT);
  for (const fold of ["Backs do not lie behind their fronts?", "A box for each of several people"])
    await page.getByText(fold).tap();
  // A back that lies to the left is moved to the right, and this device remembers it.
  await page.getByRole("textbox", { name: "Sideways" }).fill("1,5");
  await page.getByRole("combobox", { name: "Sideways: where the back lies" }).selectOption("to the left");
  await page.getByRole("textbox", { name: "Up or down" }).fill("0.5");
  const bleed = page.getByRole("checkbox", { name: "Pictures to the edge of the card" });
  await bleed.check();
  const kept = await page.evaluate(() => JSON.parse(localStorage.getItem("longhold:kit") ?? "{}"));
  expect(kept).toMatchObject({ right: 1.5, down: -0.5, bleed: 3 });
  await bleed.uncheck();
  await page.getByRole("radio", { name: "All cards" }).check();
  await page.getByRole("combobox", { name: "Part" }).selectOption("Cards");
  await sheetNumber(page).fill("2");
  await expect(page.getByRole("img", { name: "Back of sheet 2" })).toBeVisible();
  await expect(page.getByText(/too much text in the prompt/)).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(
    0,
  );
  await noAxe(page);
  await page.getByRole("link", { name: "Mend it" }).first().click();
  await expect(page.getByRole("heading", { name: "Fact", exact: true })).toBeVisible();
  await expect(page.getByRole("textbox", { name: "Prompt" })).toHaveValue(/^star star/);
  await context.close();
});

/** Below this a page is said not to jump. Common practice: 0.1 is good; half of it leaves nothing to be seen. */
const LITTLE_SHIFT = 0.05;

interface Shifting {
  shifts: number[];
}

interface Shift extends PerformanceEntry {
  readonly value: number;
  readonly sources: readonly { readonly node: Node | null }[];
}

/** Notes what jumps, save the foot, which makes way for what a page holds. Runs in the page. */
function noteShifts(): void {
  const shifts: number[] = [];
  Object.assign(window, { shifts });
  new PerformanceObserver((list) => {
    for (const { value, sources } of list.getEntries() as Shift[])
      if (sources.some(({ node }) => !(node instanceof Element && node.matches(".foot")))) shifts.push(value);
  }).observe({ type: "layout-shift", buffered: true });
}
