// Advice in the workshop: it comes while a fact is written, is taken by one click, waved off for good, and found again
// in the table, where many facts are mended at once.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "@playwright/test";
import type { SubjectView } from "../../src/app/views.ts";
import type { Fact } from "../../src/core/facts/fact.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { api, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;
let sky: string;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-critique-"));
  server = await serve(folder);
  sky = (await api<SubjectView>(server.url, "POST", "/api/subjects", { name: "Summer sky" })).body.id;
  const facts = [
    ["Abbreviation of Lepus", "Lep"],
    ["Abbreviation of Lupus", "Lup"],
    ["Brightest star  of Lyra", "Vega"],
  ];
  for (const [n, [prompt, answer]] of facts.entries()) {
    const id = createEntryId(Date.UTC(2026, 2, 1) + n, new Uint8Array(10));
    await api(server.url, "POST", "/api/facts", { id, subject: sky, content: { kind: "pair", prompt, answer } });
  }
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

const facts = async (): Promise<readonly Fact[]> =>
  (await api<{ items: readonly Fact[] }>(server.url, "GET", `/api/facts?subject=${sky}&limit=50`)).body.items;

test("a list asked whole becomes a list in order by one click", async ({ page }) => {
  await page.goto(`${server.url}/workshop?subject=${sky}&fact=new`);
  await page.getByRole("textbox", { name: "Prompt" }).fill("Summer Triangle");
  await page.getByRole("textbox", { name: "Answer" }).fill("Vega, Deneb and Altair");
  const notes = page.getByRole("region", { name: "What could be better" });
  await expect(notes.getByRole("heading", { name: "Ask the list item by item" })).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
  await notes.getByRole("button", { name: "Make it a list in order" }).click();
  await page.keyboard.press("Control+s");
  await expect(page.getByText("Saved: 3 cards.")).toBeVisible();
  const made = (await facts()).find((fact) => fact.kind === "list");
  expect(made).toMatchObject({ title: "Summer Triangle", angles: ["next-1", "next-2", "next-3"] });
});

test("a note is waved off, stays so, and can be shown again", async ({ page }) => {
  const [, , fact] = (await facts()).filter((one) => one.kind === "pair");
  await page.goto(`${server.url}/workshop?subject=${sky}&fact=${fact?.id}`);
  const notes = page.getByRole("region", { name: "What could be better" });
  const alike = notes.getByRole("heading", { name: "Make these less alike" });
  await expect(alike).toBeVisible();
  await expect(notes).toContainText("Abbreviation of Lupus");
  await notes.getByRole("button", { name: "Wave off: Make these less alike" }).click();
  await expect(alike).toHaveCount(0);
  await page.reload();
  await expect(notes).toContainText("1 note waved off");
  await expect(alike).toHaveCount(0);
  await notes.getByRole("button", { name: "Show again" }).click();
  await expect(alike).toBeVisible();
});

test("facts with a note are found in the table and mended together", async ({ page }) => {
  await page.goto(`${server.url}/workshop/table?subject=${sky}`);
  await page.getByRole("combobox", { name: /What could be better/ }).selectOption("damaged-text");
  await expect(page.getByText("1 fact", { exact: true })).toBeVisible();
  await page.getByRole("checkbox", { name: "Choose every fact shown" }).check();
  await page.getByRole("button", { name: "Mend", exact: true }).click();
  await expect(page.getByText("This changes 1 fact.")).toBeVisible();
  await page.getByRole("button", { name: "Mend them" }).click();
  await expect
    .poll(async () => (await facts()).map((fact) => "prompt" in fact && fact.prompt))
    .toContain("Brightest star of Lyra");
  await expect(page.getByText("No fact fits.")).toBeVisible();
});
