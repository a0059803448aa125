// Every kind of fact written and sat through: by keyboard, with a recording from a microphone that is none, labels drawn
// with a pointer and by keys; and text that tries to be more than text.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import sharp from "sharp";
import type { SubjectView } from "../../src/app/views.ts";
import type { Fact } from "../../src/core/facts/fact.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { api, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;
let sky: string;

test.describe.configure({ mode: "serial", timeout: 60_000 });

test.use({
  launchOptions: async ({ launchOptions }, use) =>
    use({
      ...launchOptions,
      args: [...(launchOptions.args ?? []), "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"],
    }),
});

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-kinds-"));
  server = await serve(folder);
  sky = (await api<SubjectView>(server.url, "POST", "/api/subjects", { name: "Night sky" })).body.id;
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

const facts = async (): Promise<readonly Fact[]> =>
  (await api<{ items: readonly Fact[] }>(server.url, "GET", `/api/facts?subject=${sky}&limit=50`)).body.items;

const textbox = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });

async function write(page: Page, kind: RegExp, fill: () => Promise<void>): Promise<Fact | undefined> {
  await page.goto(`${server.url}/workshop?subject=${sky}&fact=new`);
  await page.getByRole("radio", { name: kind }).press("Space");
  await fill();
  const before = (await facts()).length;
  await page.keyboard.press("Control+s");
  await expect.poll(async () => (await facts()).length).toBe(before + 1);
  return (await facts())[0];
}

test("each kind is written, and nothing for axe to find in its editor", async ({ page }) => {
  const trouble: string[] = [];
  page.on("pageerror", (error) => trouble.push(error.message));
  page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
  const clean = async (): Promise<void> => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
  };

  const list = await write(page, /^List in order/, async () => {
    await textbox(page, "Title").fill("Planets outward from the Sun");
    await textbox(page, "Items").fill("Mercury\nVenus\nEarth");
    await expect(page.getByRole("heading", { name: "3 cards" })).toBeVisible();
    await clean();
  });
  expect(list).toMatchObject({ items: ["Mercury", "Venus", "Earth"], angles: ["next-1", "next-2", "next-3"] });

  const formula = await write(page, /^Formula/, async () => {
    await textbox(page, "Name").fill("Kepler's third law");
    await textbox(page, "Formula").fill("T^2 = \\frac{4\\pi^2}{GM} a^3");
    await expect(page.locator("math mfrac").first()).toBeVisible();
    await clean();
  });
  expect(formula?.angles).toEqual(["name-to-formula", "formula-to-name"]);

  const spelling = await write(page, /^Spelling/, async () => {
    await textbox(page, "Clue").fill("The Herdsman");
    await textbox(page, "Word").fill("Boötes");
    await expect(page.getByText("So it is in the whole subject.")).toBeVisible();
    await page.getByLabel("Capital letters").press("Space");
    await page.getByRole("button", { name: "Do so in the whole subject" }).press("Enter");
    await expect(page.getByText("So it is in the whole subject.")).toBeVisible();
    await page.getByRole("button", { name: "Record" }).press("Enter");
    await page.waitForTimeout(600);
    await page.getByRole("button", { name: "Stop" }).press("Enter");
    await page.getByRole("button", { name: "Keep the recording" }).press("Enter");
    await expect(page.getByRole("button", { name: "Remove the sound" })).toBeVisible();
    await clean();
  });
  expect(spelling).toMatchObject({ accents: "count", letterCase: "ignore" });
  expect(spelling?.sound).toMatch(/^[0-9a-f]{64}$/u);

  const picture = join(folder, "lyra.png");
  await sharp({ create: { width: 400, height: 300, channels: 3, background: "#0a1530" } })
    .png()
    .toFile(picture);
  const labelled = await write(page, /^Labelled picture/, async () => {
    await page.locator("input[type=file]").first().setInputFiles(picture);
    const frame = page.getByAltText("To be labelled");
    await frame.scrollIntoViewIfNeeded();
    const box = await frame.boundingBox();
    if (!box) throw new Error("no picture");
    await page.mouse.move(box.x + 20, box.y + 20);
    await page.mouse.down();
    await page.mouse.move(box.x + 80, box.y + 60, { steps: 4 });
    await page.mouse.up();
    await textbox(page, "Name of label 1").fill("Vega");
    await page.getByRole("button", { name: "Add a label" }).press("Enter");
    await expect(textbox(page, "Name of label 2")).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).press("Enter");
    await expect(textbox(page, "Name of label 2")).toHaveCount(0);
    await page.getByRole("button", { name: "Add a label" }).press("Enter");
    await textbox(page, "Name of label 2").fill("Sulafat");
    await page.getByRole("button", { name: "Region of Sulafat" }).press("ArrowRight");
    await page.getByRole("button", { name: "Region of Sulafat" }).press("Shift+ArrowDown");
    await textbox(page, "Description of the picture").fill("Five points on a dark ground");
    await clean();
  });
  expect(labelled).toMatchObject({
    labels: [{ name: "Vega" }, { name: "Sulafat", x: expect.closeTo(0.41), height: expect.closeTo(0.21) }],
  });
  const rows = page.locator(".fact-row .fact-words");
  for (const title of ["Planets outward from the Sun", "Kepler's third law", "The Herdsman Boötes", "Vega, Sulafat"])
    await expect(rows.filter({ hasText: title })).toBeVisible();
  expect(trouble).toEqual([]);
});

test("a word is written, compared, and counted by its writer", async ({ page }) => {
  for (const fact of await facts())
    if (fact.kind !== "spelling") await api(server.url, "DELETE", `/api/facts/${fact.id}`);
  await api(server.url, "POST", "/api/box", { timeZone: "Europe/Lisbon" });
  await page.goto(server.url);
  await page.getByRole("button", { name: "Begin sitting" }).click();
  await page.getByRole("button", { name: "Seen" }).click();
  const field = textbox(page, "Write the word");
  await expect(field).toBeFocused();
  // Letters that are keys elsewhere are only letters here.
  await page.keyboard.type("Bootes mru");
  await expect(field).toHaveValue("Bootes mru");
  await field.fill("Bootes");
  await page.keyboard.press("Enter");
  await expect(page.locator(".spelling-steps del")).toHaveText("o");
  await expect(page.locator(".spelling-steps ins")).toHaveText("ö");
  const missed = page.getByRole("button", { name: "Missed" });
  await expect(missed).toHaveAccessibleDescription("1 character differs from what you wrote.");
  await expect(page.getByLabel("The card", { exact: true })).toBeFocused();
  await page.keyboard.press("ArrowLeft");
  await expect(field).toHaveValue("");
  await page.keyboard.type("Boötes");
  await page.keyboard.press("Enter");
  const recalled = page.getByRole("button", { name: "Recalled" });
  await expect(recalled).toBeFocused();
  await expect(recalled).toHaveAccessibleDescription("You wrote it right.");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { name: "Sitting finished" })).toBeVisible();
});

test("text that tries to be more than text stays text", async ({ page }) => {
  const hostile = [
    ["<img src=x onerror=alert(1)>", "<svg onload=alert(1)>"],
    ["\\(\\href{javascript:alert(1)}{x}\\)", "\\(\\input{/etc/passwd}\\)"],
    ["\\(\\def\\a{\\a\\a}\\a\\)", "\\(\\includegraphics{x.png}\\)"],
    ["star\u202egnp.exe", "\u202dVega"],
    ["\\(\\text{a style=b class=c}\\)", "Vega"],
  ];
  const ids: string[] = [];
  for (const [n, [prompt, answer]] of hostile.entries()) {
    const id = createEntryId(Date.UTC(2026, 2, 1) + n, new Uint8Array(10));
    ids.push(id);
    const { status } = await api(server.url, "POST", "/api/facts", {
      id,
      subject: sky,
      content: { kind: "pair", prompt, answer },
    });
    expect(status).toBe(200);
  }
  const dialogs: string[] = [];
  page.on("dialog", (dialog) => dialogs.push(dialog.message()));
  for (const id of ids) {
    await page.goto(`${server.url}/workshop?subject=${sky}&fact=${id}`);
    await expect(page.getByRole("heading", { name: "2 cards" })).toBeVisible();
    await page.waitForTimeout(300);
    expect(await page.locator(".live-cards :is(img, svg, a, script, iframe, mglyph)").count()).toBe(0);
    expect(await page.locator(".live-cards").textContent()).not.toMatch(/[\u202d\u202e]/u);
  }
  await expect(page.locator(".live-cards math").first()).toHaveText(/a\sstyle=b\sclass=c/u);
  await page.goto(`${server.url}/workshop?subject=${sky}&fact=${ids[3]}`);
  await expect(page.locator(".live-cards")).toContainText("stargnp.exe");
  expect(dialogs).toEqual([]);
});
