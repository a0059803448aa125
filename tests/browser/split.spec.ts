// A pasted text becomes cards: blanks pressed in their sentences by keyboard, a list given its title, saved together and
// undone together.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "@playwright/test";
import type { SubjectView } from "../../src/app/views.ts";
import type { Fact } from "../../src/core/facts/fact.ts";
import { api, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;
let sky: string;

test.setTimeout(40_000);

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-split-"));
  server = await serve(folder);
  sky = (await api<SubjectView>(server.url, "POST", "/api/subjects", { name: "Night sky" })).body.id;
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

const facts = async (): Promise<readonly Fact[]> =>
  (await api<{ items: readonly Fact[] }>(server.url, "GET", `/api/facts?subject=${sky}&limit=50`)).body.items;

for (const [size, viewport] of Object.entries({
  desktop: { width: 1280, height: 800 },
  phone: { width: 360, height: 740 },
}))
  test(`a paragraph and a list become cards, ${size}`, async ({ page }) => {
    await page.setViewportSize(viewport);
    await page.goto(`${server.url}/workshop/split?subject=${sky}`);
    const text = page.getByRole("textbox", { name: "The text" });
    await text.fill("Uranus was found by William Herschel on 13 March 1781. [Once] it was called a comet.");
    await page.getByRole("button", { name: "William Herschel: ask for this name" }).press("Space");
    await page.getByRole("button", { name: "1781: ask for this date" }).press("Enter");
    await expect(page.getByText("1 fact, 2 cards")).toBeVisible();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    await page.getByRole("button", { name: "Save 2 cards" }).click();
    await expect(page.getByText("Saved: 1 fact.")).toBeVisible();
    expect(await facts()).toMatchObject([
      {
        kind: "statement",
        statement: "Uranus was found by [William Herschel] on 13 March [1781].",
        angles: ["gap-1", "gap-2"],
      },
    ]);
    await expect(text).toHaveValue("");
    await page.getByRole("button", { name: "Close this notice" }).click();

    await text.fill("Vega\nDeneb\nAltair");
    await page.getByRole("checkbox", { name: "Ask this list from each item to the next: 3 cards" }).check();
    await page.getByRole("textbox", { name: "What the list is called" }).fill("Summer Triangle");
    await page.getByRole("button", { name: "Save 3 cards" }).click();
    await expect.poll(async () => (await facts()).map((fact) => fact.kind)).toEqual(["list", "statement"]);
    await page.getByRole("button", { name: "Undo", exact: true }).last().click();
    await expect.poll(async () => (await facts()).map((fact) => fact.kind)).toEqual(["statement"]);
    await api(server.url, "DELETE", `/api/facts/${(await facts())[0]?.id}`);
  });
