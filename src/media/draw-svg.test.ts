import sharp from "sharp";
import { expect, it, vi } from "vitest";
import { drawSvg } from "./draw-svg.ts";

// Quick alone; room for a busy machine.
vi.setConfig({ testTimeout: 30_000 });

const LIMITS = { smallestSide: 120, largestSide: 240, pixels: 1_000_000, seconds: 10 };
const svg = (attributes: string, inside = '<circle cx="6" cy="6" r="5"/>'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`;

async function size(text: string): Promise<readonly [number, number]> {
  const png = await drawSvg(text, LIMITS);
  if (!png.ok) throw new Error(png.error);
  const { width, height } = await sharp(png.value).metadata();
  return [width, height];
}

it("enlarges an icon, keeps a middling size, and draws a huge one small", async () => {
  expect(await size(svg('viewBox="0 0 12 6"'))).toEqual([120, 60]);
  expect(await size(svg('width="200" height="100"'))).toEqual([200, 100]);
  expect(await size(svg('width="20000" height="10000" viewBox="0 0 12 6"'))).toEqual([240, 120]);
});

it("says so if a drawing is broken", async () => {
  expect(await drawSvg("<svg>", LIMITS)).toMatchObject({ ok: false, error: expect.stringMatching(/cannot be drawn/) });
});

it("gives up when the time is over, and leaves nothing running", async () => {
  const circles = svg('viewBox="0 0 12 12"', '<circle cx="6" cy="6" r="6" opacity=".5"/>'.repeat(50_000));
  const start = performance.now();
  const result = await drawSvg(circles, { smallestSide: 4000, largestSide: 4000, pixels: 50_000_000, seconds: 1 });
  expect(result).toMatchObject({ ok: false, error: expect.stringMatching(/too long/) });
  expect(performance.now() - start).toBeLessThan(5_000);
});
