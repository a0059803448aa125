// A list with a sound is brought, as it says which way it is asked, and undone again as one step.
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

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-import-"));
  server = await serve(folder);
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

async function facts(): Promise<readonly Fact[]> {
  const { subjects } = (await api<{ subjects: readonly SubjectView[] }>(server.url, "GET", "/api/subjects")).body;
  const subject = subjects[0]?.id ?? "";
  return (await api<{ items: readonly Fact[] }>(server.url, "GET", `/api/facts?subject=${subject}&limit=9`)).body.items;
}

test("a list with a sound comes in as it says, and is undone from its result", async ({ page }) => {
  await page.goto(`${server.url}/workshop/import`);
  const list = "prompt,answer,sound,angles\r\nBrightest star of Lyra,Vega,vega.wav,forward\r\n";
  await page
    .getByLabel("Choose a list")
    .setInputFiles({ name: "sky.csv", mimeType: "text/csv", buffer: Buffer.from(list) });
  const wav = Buffer.from("RIFF\u0004\u0000\u0000\u0000WAVE", "latin1");
  await page
    .getByLabel("Choose pictures or sounds")
    .setInputFiles({ name: "vega.wav", mimeType: "audio/wav", buffer: wav });
  await expect(page.getByText("1 sound")).toBeVisible();
  await page.getByRole("button", { name: "Read the list" }).click();
  await expect(page.getByText("All 1 card.")).toBeVisible();
  await page.getByLabel("Name of the new subject").fill("Night sky");
  await page.getByRole("button", { name: /^(Save|Keep) 1 fact/ }).click();
  await expect(page.getByRole("heading", { name: "1 fact saved" })).toBeVisible();
  expect(await facts()).toMatchObject([
    { answer: "Vega", angles: ["forward"], sound: expect.stringMatching(/^[0-9a-f]{64}$/u) },
  ]);
  await page.getByRole("button", { name: "Undo the import" }).click();
  await expect(page.getByRole("heading", { name: "The import was undone" })).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(await facts()).toEqual([]);
});
