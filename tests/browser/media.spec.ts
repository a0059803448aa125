// Pictures made in the workshop: drawn with a pointer and by keys, turned, cut, taken with a camera that is none, pasted;
// each step undone.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import sharp from "sharp";
import type { SubjectView } from "../../src/app/views.ts";
import { api, type ServerProcess, serve } from "../support/program.ts";

let folder: string;
let server: ServerProcess;
let sky: string;

test.setTimeout(40_000);

test.use({
  launchOptions: async ({ launchOptions }, use) =>
    use({
      ...launchOptions,
      args: [...(launchOptions.args ?? []), "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"],
    }),
});

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "longhold-media-"));
  server = await serve(folder);
  sky = (await api<SubjectView>(server.url, "POST", "/api/subjects", { name: "Night sky" })).body.id;
});

test.afterAll(async () => {
  await server.end("SIGTERM");
  rmSync(folder, { recursive: true, force: true });
});

async function newPicture(page: Page): Promise<void> {
  await page.goto(`${server.url}/workshop?subject=${sky}&fact=new`);
  await page.getByRole("radio", { name: /^Picture/ }).check();
}

/** The share of the sheet's pixels that are not white. */
const inked = (page: Page): Promise<number> =>
  page.getByRole("application").evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext("2d")?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] };
    let dark = 0;
    for (let i = 0; i < data.length; i += 4) if ((data[i] ?? 255) < 250) dark++;
    return dark / (data.length / 4);
  });

const sheetSize = (page: Page): Promise<readonly number[]> =>
  page.getByRole("application").evaluate((canvas: HTMLCanvasElement) => [canvas.width, canvas.height]);

async function drag(page: Page, from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  const box = await page.getByRole("application").boundingBox();
  if (!box) throw new Error("no sheet");
  const at = ([x, y]: readonly [number, number]) => [box.x + x * box.width, box.y + y * box.height] as const;
  await page.mouse.move(...at(from));
  await page.mouse.down();
  await page.mouse.move(...at([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]));
  await page.mouse.move(...at(to));
  await page.mouse.up();
}

test("a picture is drawn, undone, erased, turned and cut, by pointer and by keys", async ({ page }) => {
  const trouble: string[] = [];
  page.on("pageerror", (error) => trouble.push(error.message));
  page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
  await newPicture(page);
  await page.getByRole("button", { name: "Draw one" }).click();
  const { violations } = await new AxeBuilder({ page }).include("dialog").analyze();
  expect(violations.map(({ id, nodes }) => ({ id, where: nodes.map((node) => node.html) }))).toEqual([]);
  expect(await inked(page)).toBe(0);

  await drag(page, [0.2, 0.2], [0.7, 0.6]);
  const drawn = await inked(page);
  expect(drawn).toBeGreaterThan(0);
  await page.keyboard.press("Control+z");
  expect(await inked(page)).toBe(0);
  await page.getByRole("button", { name: "Redo" }).press("Enter");
  expect(await inked(page)).toBe(drawn);

  await page.getByLabel("Tool").selectOption("eraser");
  await page.getByLabel("Width").selectOption("thick");
  await drag(page, [0.15, 0.15], [0.5, 0.45]);
  expect(await inked(page)).toBeLessThan(drawn);
  await page.getByRole("button", { name: "Undo" }).click();

  await page.getByLabel("Tool").selectOption("pen");
  await page.getByRole("application").focus();
  await page.keyboard.press("Space");
  for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Space");
  expect(await inked(page)).toBeGreaterThan(drawn);

  const [width = 0, height = 0] = await sheetSize(page);
  await page.getByRole("button", { name: "Turn right" }).click();
  expect(await sheetSize(page)).toEqual([height, width]);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByLabel("Left").fill("10");
  await page.getByLabel("Bottom").fill("50");
  await page.getByRole("button", { name: "Cut", exact: true }).click();
  expect(await sheetSize(page)).toEqual([Math.round(width * 0.9), height / 2]);
  await page.getByRole("button", { name: "Undo" }).click();
  await page.getByLabel("Tool").selectOption("cut");
  await drag(page, [0.1, 0.1], [0.9, 0.9]);
  const [cut = 0] = await sheetSize(page);
  expect(cut / width).toBeCloseTo(0.8, 1);

  // What was drawn is not thrown away without a question.
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Go on drawing" }).click();
  await page.getByRole("button", { name: "Done" }).click();
  await expect(page.getByAltText("Picture", { exact: true })).toBeVisible();
  await page.getByRole("button", { name: "Draw on it or cut it" }).click();
  expect((await sheetSize(page))[0]).toBe(cut);
  await page.getByRole("button", { name: "Cancel" }).click();
  await page.getByRole("button", { name: "Remove the picture" }).click();
  await expect(page.getByRole("button", { name: "Draw one" })).toBeVisible();
  expect(trouble).toEqual([]);
});

test("a picture is taken with the camera, and one is pasted", async ({ page }) => {
  await newPicture(page);
  await page.getByRole("button", { name: "Camera" }).click();
  await expect
    .poll(() => page.locator("video").evaluate((video: HTMLVideoElement) => video.videoWidth))
    .toBeGreaterThan(0);
  await page.getByRole("button", { name: "Take the picture" }).click();
  await page.getByRole("button", { name: "Done" }).click();
  await expect(page.getByAltText("Picture", { exact: true })).toBeVisible();
  await page.getByRole("button", { name: "Remove the picture" }).click();

  const png = await sharp({ create: { width: 60, height: 40, channels: 3, background: "#0a1530" } })
    .png()
    .toBuffer();
  await page.evaluate(
    (bytes) => {
      const data = new DataTransfer();
      data.items.add(new File([new Uint8Array(bytes)], "pasted.png", { type: "image/png" }));
      window.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, cancelable: true }));
    },
    [...png],
  );
  await expect(page.getByAltText("Picture", { exact: true })).toBeVisible();
  await page.getByRole("textbox", { name: "Name", exact: true }).fill("Lyra");
  await page.getByRole("textbox", { name: "Description of the picture" }).fill("A dark ground");
  await page.getByRole("textbox", { name: "Source of the picture" }).fill("own hand");
  await page.getByRole("textbox", { name: "Licence of the picture" }).fill("CC0");
  await page.keyboard.press("Control+s");
  await expect(page.getByText("Saved: 2 cards.")).toBeVisible();
  await expect(page.getByText("Picture: own hand, CC0").first()).toBeVisible();
  await expect(page.getByRole("button", { name: "Hear the answer" }).first()).toBeVisible();
});
