// Draws a checked SVG as a bitmap, in a process of its own: a small drawing can ask for hours of filters and
// overlapping shapes, the drawing library cannot be interrupted, and a process can.
import { spawn } from "node:child_process";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import { fail, ok, type Result } from "../core/result.ts";

/** How large and how long a drawing may be drawn: pixels of the longest side, and seconds. */
export interface DrawLimits {
  readonly smallestSide: number;
  readonly largestSide: number;
  readonly pixels: number;
  readonly seconds: number;
}

/** Runs in the child: SVG in, PNG out. Small drawings (icons) are enlarged, huge ones drawn small. */
const childProgram = (sharp: string, limits: DrawLimits): string => `
import sharp from ${JSON.stringify(sharp)};
const limits = ${JSON.stringify(limits)};
const parts = [];
for await (const part of process.stdin) parts.push(part);
const svg = Buffer.concat(parts);
sharp.concurrency(1);
const { width, height, density } = await sharp(svg, { limitInputPixels: false }).metadata();
const side = Math.max(width, height);
const wanted = Math.min(limits.largestSide, Math.max(limits.smallestSide, side));
const scaled = Math.min(100000, Math.max(1, (density ?? 72) * wanted / side));
const png = await sharp(svg, { density: scaled, limitInputPixels: limits.pixels })
  .resize({ width: limits.largestSide, height: limits.largestSide, fit: "inside", withoutEnlargement: true })
  .png({ compressionLevel: 1 }).toBuffer();
process.stdout.write(png);
`;

/** Draws the SVG as PNG bytes. Fails if it cannot be drawn, or not within the seconds allowed. */
export function drawSvg(svg: string, limits: DrawLimits): Promise<Result<Uint8Array, string>> {
  const sharp = pathToFileURL(createRequire(import.meta.url).resolve("sharp")).href;
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ["--input-type=module", "--eval", childProgram(sharp, limits)], {
      stdio: ["pipe", "pipe", "ignore"],
      // Nothing given to this program on its command line belongs to the child.
      env: { ...process.env, NODE_OPTIONS: "" },
    });
    const parts: Buffer[] = [];
    let late = false;
    const timer = setTimeout(() => {
      late = true;
      child.kill("SIGKILL");
    }, limits.seconds * 1000);
    child.stdout.on("data", (part: Buffer) => parts.push(part));
    // The child may die before it has read everything; its end is reported below.
    child.stdin.on("error", () => undefined);
    child.on("error", () => {
      clearTimeout(timer);
      resolve(fail("the drawing cannot be drawn on this computer: save it as PNG"));
    });
    child.on("close", (code) => {
      clearTimeout(timer);
      if (late) resolve(fail("the drawing takes too long to draw: make it simpler, or save it as PNG"));
      else if (code === 0) resolve(ok(Buffer.concat(parts)));
      else
        resolve(fail("the drawing cannot be drawn: open it in the program that made it, and save it again or as PNG"));
    });
    child.stdin.end(svg);
  });
}
