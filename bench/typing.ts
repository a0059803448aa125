// How soon the live cards follow the typing: from each input event to the painted frame in which a card shows the letter,
// in Chromium, in the editor of the demo's subject. Run: npm run bench:typing   (about half a minute)
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "@playwright/test";
import config from "../playwright.config.ts";
import { longhold, serve } from "../tests/support/program.ts";

/** Letters that are not counted: scripts and styles warm up. */
const WARM_UP = 20;
const LETTERS = 200;

declare global {
  interface Window {
    /** Milliseconds from each input event to the painted frame with the letter. */
    followed: number[];
  }
}

/** In the page: notes for each input event when a frame was painted in which the first card reads as the field does. */
function watchCards(): void {
  window.followed = [];
  let begun: number | null = null;
  let wanted = "";
  document.addEventListener(
    "input",
    (event) => {
      wanted = (event.target as HTMLTextAreaElement).value.trim();
      begun = event.timeStamp;
    },
    { capture: true },
  );
  const painted = new MessageChannel();
  painted.port1.onmessage = () => {
    if (begun !== null) window.followed.push(performance.now() - begun);
    begun = null;
  };
  new MutationObserver(() => {
    if (document.querySelector(".live-cards .card-words")?.textContent === wanted)
      requestAnimationFrame(() => painted.port2.postMessage(null));
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
}

async function type(page: Page, letters: number): Promise<readonly number[]> {
  const before = await page.evaluate(() => window.followed.length);
  for (let i = 0; i < letters; i++) {
    await page.keyboard.press("abcdefghijklmnopqrstuvwxyz".charAt(i % 26));
    await page.waitForFunction((count) => window.followed.length > count, before + i, { polling: 5 });
  }
  return page.evaluate((from) => window.followed.slice(from), before);
}

const percentile = (times: readonly number[], share: number): string =>
  ([...times].sort((a, b) => a - b)[Math.ceil(share * times.length) - 1] ?? Number.NaN).toFixed(1);

const folder = mkdtempSync(join(tmpdir(), "longhold-typing-"));
await longhold("demo", "--data", folder);
const server = await serve(folder);
const browser = await chromium.launch(config.use?.launchOptions);
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(`${server.url}/workshop?fact=new`);
  await page.getByRole("textbox", { name: "Answer" }).fill("Vega, Deneb and Altair");
  await page.getByRole("textbox", { name: "Prompt" }).fill("star");
  await page.locator(".live-cards .card-words").first().waitFor();
  await page.evaluate(watchCards);
  await page.getByRole("textbox", { name: "Prompt" }).focus();
  await type(page, WARM_UP);
  const times = await type(page, LETTERS);
  const figures = [0.5, 0.95, 1].map((share) => percentile(times, share));
  console.log(
    `${LETTERS} letters on ${cpus().length} cores: median ${figures[0]} ms, 95 % within ${figures[1]} ms, longest ${figures[2]} ms`,
  );
} finally {
  await browser.close();
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
}
