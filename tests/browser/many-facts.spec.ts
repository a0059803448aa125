// Many facts at once: cells changed by keyboard, words replaced after a look at what that does, duplicates merged,
// facts moved; and every one of these steps undone.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { SubjectView } from "../../src/app/views.ts";
import type { Fact } from "../../src/core/facts/fact.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { api, type ServerProcess, serve } from "../support/program.ts";

const STARS: readonly [prompt: string, answer: string][] = [
  ["Brightest star of Lyra", "Vega"],
  ["Brightest star of Aquila", "Altair"],
  ["Brightest star of Cygnus", "Deneb"],
  ["brightest star of lyra", "Vega."],
];

let folder: string;
let server: ServerProcess;
let sky: string;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-many-"));
  server = await serve(folder);
  sky = (await api<SubjectView>(server.url, "POST", "/api/subjects", { name: "Summer sky" })).body.id;
  await api(server.url, "POST", "/api/subjects", { name: "Winter sky" });
  for (const [n, [prompt, answer]] of STARS.entries()) {
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

const cell = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });

/** Presses Undo in the newest notice, and waits until the facts are as they were. */
async function undo(page: Page, before: readonly Fact[]): Promise<void> {
  await page.getByRole("button", { name: "Undo", exact: true }).last().click();
  await expect.poll(facts).toEqual(before);
}

test("a cell is changed by keyboard, and every change to many is seen first and undone", async ({ page }) => {
  const before = await facts();
  await page.goto(`${server.url}/workshop/table?subject=${sky}`);

  const answer = cell(page, "Answer or name of Brightest star of Cygnus");
  await answer.focus();
  await page.keyboard.press("End");
  await page.keyboard.type(" (α Cygni)");
  await page.keyboard.press("Enter");
  await expect
    .poll(async () => (await facts()).map((fact) => "answer" in fact && fact.answer))
    .toContain("Deneb (α Cygni)");
  await undo(page, before);
  await expect(answer).toHaveValue("Deneb");

  await answer.fill("");
  await answer.press("Enter");
  await expect(page.getByRole("alert")).toContainText("must not be empty");
  await answer.press("Escape");
  await expect(answer).toHaveValue("Deneb");

  await page.getByRole("checkbox", { name: "Choose every fact shown" }).check();
  await page.getByRole("button", { name: "Replace words" }).click();
  await page.getByLabel("Find").fill("BRIGHTEST STAR");
  await page.getByLabel("Replace by").fill("Alpha");
  await expect(page.getByText("This changes 4 facts.")).toBeVisible();
  await expect(page.getByRole("region", { name: "Before and after" }).locator("ins").first()).toHaveText(/lpha/);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
  expect(await facts()).toEqual(before);
  await page.getByRole("button", { name: "Replace", exact: true }).click();
  await expect(cell(page, "Prompt or statement of Alpha of Cygnus")).toHaveValue("Alpha of Cygnus");
  await undo(page, before);

  await page.getByRole("checkbox", { name: "Choose Brightest star of Aquila" }).check();
  await page.getByRole("button", { name: "Tags" }).click();
  await page.getByLabel("Add").fill("eagle, summer");
  await page.getByRole("button", { name: "Change tags" }).click();
  await page.getByRole("combobox", { name: /^Tag/ }).selectOption("eagle");
  await expect(page.getByText("1 fact", { exact: true })).toBeVisible();
  await expect(cell(page, "Tags of Brightest star of Aquila")).toHaveValue("eagle, summer");
  await page.getByRole("combobox", { name: /^Tag/ }).selectOption("");
  await undo(page, before);
});

test("duplicates are merged, facts are moved and deleted, and all of it is taken back from the list", async ({
  page,
}) => {
  const before = await facts();
  await page.goto(`${server.url}/workshop/table?subject=${sky}`);
  await page.getByRole("button", { name: "Find duplicates" }).click();
  await page.getByRole("radio", { name: /^Brightest star of Lyra/ }).check();
  await page.getByRole("button", { name: "Merge these" }).click();
  await expect(page.getByText("No two facts of this subject say the same.")).toBeVisible();
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await expect.poll(async () => (await facts()).length).toBe(3);

  await page.getByRole("checkbox", { name: "Choose Brightest star of Cygnus" }).check();
  await page.getByRole("button", { name: "Move" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Move" }).click();
  await expect.poll(async () => (await facts()).length).toBe(2);

  await page.getByRole("checkbox", { name: "Choose every fact shown" }).check();
  await page.getByRole("button", { name: "Delete" }).click();
  await expect(page.getByText("No fact fits.")).toBeVisible();

  await page.getByText("Earlier edits").click();
  for (const title of ["Deleted 2 facts", "Moved 1 fact to “Winter sky”", "Merged facts into one"]) {
    await page.getByRole("button", { name: `Undo: ${title}`, exact: true }).click();
    await expect(page.getByRole("button", { name: `Undo: ${title}`, exact: true })).toHaveCount(0);
  }
  expect(await facts()).toEqual(before);
});

test("a word is looked for in all subjects", async ({ page }) => {
  const winter = (
    await api<{ subjects: readonly SubjectView[] }>(server.url, "GET", "/api/subjects")
  ).body.subjects.find((one) => one.name === "Winter sky");
  const id = createEntryId(Date.UTC(2026, 2, 2), new Uint8Array(10));
  const content = { kind: "pair", prompt: "Brightest star of Orion", answer: "Rigel" };
  await api(server.url, "POST", "/api/facts", { id, subject: winter?.id, content });
  await page.goto(`${server.url}/workshop/table?subject=${sky}`);
  await page.getByRole("combobox", { name: /^Subject/ }).selectOption("all");
  await page.getByRole("searchbox", { name: "Search" }).fill("brightest");
  await expect(page.getByText("5 facts", { exact: true })).toBeVisible();
  await page.getByRole("searchbox", { name: "Search" }).fill("rigel");
  await expect(page.getByText("1 fact", { exact: true })).toBeVisible();
  await expect(cell(page, "Answer or name of Brightest star of Orion")).toHaveValue("Rigel");
});

test("an earlier wording is gone back to from the editor", async ({ page }) => {
  const [fact] = await facts();
  await page.goto(`${server.url}/workshop?subject=${sky}&fact=${fact?.id}`);
  await page.getByRole("textbox", { name: "Prompt" }).fill("Alpha Lyrae");
  await page.keyboard.press("Control+s");
  await expect(page.getByText("Saved.")).toBeVisible();
  await page.getByText("Earlier wordings").click();
  await page.getByRole("button", { name: "Go back to this wording" }).first().click();
  await expect(page.getByRole("textbox", { name: "Prompt" })).toHaveValue("brightest star of lyra");
  await page.keyboard.press("Control+s");
  await expect.poll(async () => (await facts())[0]).toEqual(fact);
});
