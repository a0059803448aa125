// Takes the pictures of the README from the real product with the demo in it. Run: npm run pictures
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium, type Page } from "@playwright/test";
import sharp from "sharp";
import config from "../playwright.config.ts";
import { longhold, serve } from "../tests/support/program.ts";

const target = fileURLToPath(new URL("../docs/pictures/", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "longhold-pictures-"));

async function take(page: Page, name: string): Promise<void> {
  await page.waitForLoadState("networkidle");
  const shot = await page.screenshot({ animations: "disabled" });
  // A palette is enough for flat colours and keeps the repository small.
  await sharp(shot)
    .png({ palette: true, quality: 90 })
    .toFile(join(target, `${name}.png`));
}

async function takeAll(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.getByRole("button", { name: "Begin sitting" }).waitFor();
  await take(page, "today");
  await page.goto(`${url}/workshop`);
  await page.getByRole("link", { name: /Orion/ }).first().click();
  await page.getByRole("button", { name: "Save", exact: true }).waitFor();
  await take(page, "workshop");
  await page.goto(`${url}/box`);
  await page.getByRole("button", { name: /^Compartment 4\b/ }).click();
  await page.getByRole("heading", { name: /^Compartment 4/ }).waitFor();
  await take(page, "box");
  await page.goto(`${url}/plan`);
  await page.getByText(/and what is not yet known about your recall/).waitFor();
  await take(page, "plan");
  await page.goto(`${url}/kit`);
  await page.getByRole("combobox", { name: "Part" }).selectOption("Cards");
  await page.getByRole("button", { name: "Next sheet" }).click();
  await page.getByRole("img", { name: "Back of sheet 3" }).waitFor();
  await take(page, "kit");
  await page.goto(`${url}/workshop/import`);
  const rows = [
    "prompt\tanswer\tnote",
    "Brightest star of Lyra\tVega\tnearly overhead in summer",
    "Brightest star of Aquila\tAltair\t",
    "\tDeneb\t",
  ];
  await page.getByRole("textbox").first().fill(rows.join("\n"));
  await page.getByRole("button", { name: "Read the list" }).click();
  await page.getByText("Vega").first().waitFor();
  await take(page, "import");
  await page.goto(url);
  await page.getByRole("button", { name: "Begin sitting" }).click();
  for (;;) {
    await page.getByRole("button", { name: "Turn" }).click();
    await page.getByRole("button", { name: "Recalled" }).waitFor();
    await page.waitForLoadState("networkidle");
    if (await page.locator(".sitting-root img").count()) break;
    await page.getByRole("button", { name: "Recalled" }).click();
  }
  await take(page, "sitting");
}

await longhold("demo", "--data", folder);
const server = await serve(folder);
const browser = await chromium.launch(config.use?.launchOptions ?? {});
try {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    locale: "en-GB",
    reducedMotion: "reduce",
  });
  await takeAll(await context.newPage(), server.url);
} finally {
  await browser.close();
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
}
