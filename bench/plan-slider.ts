// How soon the Plan page answers its slider: from the slider's input event to the next painted frame that shows the
// new load, in Chromium, on the demo's box, with the built server. Run: npm run bench:plan   (about two minutes)
//
// Keys move the slider, so the events are the browser's own. A frame counts as painted when the first task after its
// animation callbacks runs. Three rhythms: step upon step, as under a dragging hand; steps with pauses, in which
// exact quantiles are under way; and steps with rests, in which recall is being mixed in. Beside it stands a page
// that works the same load out in the input event itself, quantiles and all.
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "@playwright/test";
import { build } from "vite";
import config from "../playwright.config.ts";
import type { PlanView } from "../src/app/views.ts";
import type { planLoad } from "../src/core/load/plan-load.ts";
import { draftOf, questionOf } from "../src/web/plan/plan-draft.ts";
import { longhold, serve } from "../tests/support/program.ts";

const RHYTHMS = [
  { name: "step upon step", steps: 150, rest: 0 },
  { name: "with pauses of a quarter of a second", steps: 100, rest: 250 },
  { name: "with rests of a second and a half", steps: 50, rest: 1_500 },
] as const;

/** Steps that are not counted: scripts and styles warm up. */
const WARM_UP = 10;

const MAIN_THREAD_STEPS = 40;

/** The slider turns round here, so that it never stands still at an end. */
const TURNS = { low: 2, high: 45 } as const;

declare global {
  interface Window {
    /** Milliseconds from each input event to its painted frame. */
    answered: number[];
    core: { readonly planLoad: typeof planLoad };
  }
}

/** In the page: notes for each input event when the frame with its load was painted. */
function watchPlan(): void {
  window.answered = [];
  let begun: number | null = null;
  document.addEventListener("input", (event) => (begun = event.timeStamp), { capture: true });
  const plot = document.querySelector(".plot");
  const painted = new MessageChannel();
  painted.port1.onmessage = () => {
    if (begun !== null) window.answered.push(performance.now() - begun);
    begun = null;
  };
  // The plot is busy from the input until it shows the load that was asked for.
  new MutationObserver(() => {
    if (plot?.getAttribute("aria-busy") === "false") requestAnimationFrame(() => painted.port2.postMessage(null));
  }).observe(plot as Element, { attributeFilter: ["aria-busy"] });
}

/** Moves the slider by keys; gives the milliseconds of each step. */
async function slide(page: Page, steps: number, rest: number): Promise<readonly number[]> {
  const before = await page.evaluate(() => window.answered.length);
  const slider = page.locator("input[type=range]").first();
  let up = true;
  for (let i = 0; i < steps; i++) {
    const value = Number(await slider.inputValue());
    up = value <= TURNS.low || (up && value < TURNS.high);
    await page.keyboard.press(up ? "ArrowRight" : "ArrowLeft");
    await page.waitForFunction((count) => window.answered.length > count, before + i, { polling: 5 });
    if (rest > 0) await page.waitForTimeout(rest);
  }
  return page.evaluate((from) => window.answered.slice(from), before);
}

const percentile = (times: readonly number[], share: number): number =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.ceil(share * times.length) - 1)] ?? Number.NaN;

function report(name: string, times: readonly number[]): void {
  const [p50, p95, max] = [0.5, 0.95, 1].map((share) => percentile(times, share).toFixed(1).padStart(7));
  console.log(`${name.padEnd(40)}${String(times.length).padStart(6)}${p50}${p95}${max}`);
}

async function planPage(browser: Browser, url: string): Promise<readonly number[]> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(`${url}/plan`);
  await page.locator(".plot").first().waitFor();
  await page.evaluate(watchPlan);
  await page.getByRole("slider", { name: "New cards a day" }).focus();
  await slide(page, WARM_UP, 0);
  const all: number[] = [];
  for (const { name, steps, rest } of RHYTHMS) {
    const times = await slide(page, steps, rest);
    report(name, times);
    all.push(...times);
  }
  report("all", all);
  await page.close();
  return all;
}

/** The core as a script for a page. */
async function coreScript(): Promise<string> {
  const entry = fileURLToPath(new URL("../src/core/load/plan-load.ts", import.meta.url));
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: { write: false, lib: { entry, formats: ["iife"], name: "core" } },
  });
  const [first] = Array.isArray(built) ? built : [built];
  const chunk = first && "output" in first ? first.output[0] : null;
  if (!chunk) throw new Error("the core was not built");
  return `${chunk.code}\nwindow.core = core;`;
}

/** The same loads, exact quantiles included, worked out in the input event. */
async function mainThreadPage(browser: Browser, url: string): Promise<readonly number[]> {
  const view = (await (await fetch(`${url}/api/plan?timeZone=UTC`)).json()) as PlanView;
  const question = questionOf(view, draftOf(view));
  const page = await browser.newPage();
  await page.setContent(`<input type="range" max="50" value="8"><svg width="1100" height="240"><path></path></svg>`);
  await page.addScriptTag({ content: await coreScript() });
  await page.evaluate((asked) => {
    window.answered = [];
    document.querySelector("input")?.addEventListener("input", (event) => {
      const each = Number((event.target as HTMLInputElement).value);
      const days = window.core.planLoad({ ...asked, schedule: { kind: "steady", each } });
      const line = days.map(({ reviews }, i) => `${3 * i} ${240 - reviews.mean}`).join("L");
      document.querySelector("path")?.setAttribute("d", `M${line}`);
      const painted = new MessageChannel();
      painted.port1.onmessage = () => window.answered.push(performance.now() - event.timeStamp);
      requestAnimationFrame(() => painted.port2.postMessage(null));
    });
  }, question);
  await page.locator("input").focus();
  await slide(page, 3, 0);
  return slide(page, MAIN_THREAD_STEPS, 0);
}

const folder = mkdtempSync(join(tmpdir(), "longhold-slider-"));
await longhold("demo", "--data", folder);
const server = await serve(folder);
const browser = await chromium.launch(config.use?.launchOptions ?? {});
try {
  const busy = (): string => `${loadavg()[0]?.toFixed(1)} processes on ${cpus().length} cores`;
  console.log(`Chromium ${browser.version()}; at the start ${busy()}\n`);
  console.log(`${"milliseconds".padEnd(40)} steps    p50    p95    max`);
  const own = await planPage(browser, server.url);
  const other = await mainThreadPage(browser, server.url);
  report("all of it in the input event", other);
  console.log(`\nat the end ${busy()}, these two programs among them`);
  console.log(`ratio of the medians: ${(percentile(other, 0.5) / percentile(own, 0.5)).toFixed(1)}`);
} finally {
  await browser.close();
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
}
