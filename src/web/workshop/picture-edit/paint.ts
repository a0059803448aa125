// Draws a picture with its steps: what was there below, ink above, so that the eraser takes ink only.
import { getStroke } from "perfect-freehand";
import { type Pixels, type Step, sizeAfter } from "./drawing.ts";

/** What a drawing is made on: a picture, or a blank sheet. */
export interface Ground {
  readonly size: Pixels;
  readonly picture: CanvasImageSource | null;
}

/** A blank sheet in the proportions of a card. */
export const BLANK: Ground = { size: [1050, 740], picture: null };

/** White, whatever the theme: the sheet is stored as a picture. */
const PAPER = "#ffffff";

/** Paints everything onto a canvas, which takes the size that is left. */
export function paint(canvas: HTMLCanvasElement, ground: Ground, steps: readonly Step[]): void {
  let below = layer(ground.size);
  const first = below.getContext("2d");
  if (first) {
    first.fillStyle = PAPER;
    first.fillRect(0, 0, ...ground.size);
    if (ground.picture) first.drawImage(ground.picture, 0, 0, ...ground.size);
  }
  let ink = layer(ground.size);
  for (const [i, step] of steps.entries()) {
    if (step.kind === "stroke") drawStroke(ink, step);
    else {
      const size = sizeAfter(ground.size, steps.slice(0, i + 1));
      [below, ink] = [changed(below, step, size), changed(ink, step, size)];
    }
  }
  [canvas.width, canvas.height] = [below.width, below.height];
  const context = canvas.getContext("2d");
  context?.drawImage(below, 0, 0);
  context?.drawImage(ink, 0, 0);
}

function layer([width, height]: Pixels): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [width, height];
  return canvas;
}

function drawStroke(canvas: HTMLCanvasElement, { points, width, ink }: Extract<Step, { kind: "stroke" }>): void {
  const context = canvas.getContext("2d");
  if (!context) return;
  // A mouse presses always alike; then the width follows the speed.
  const simulatePressure = points.every(([, , pressure]) => pressure === 0.5);
  const outline = getStroke(
    points.map((point) => [...point]),
    { size: width, thinning: ink === null ? 0 : 0.5, simulatePressure },
  );
  const path = new Path2D();
  for (const [i, [x = 0, y = 0]] of outline.entries()) i === 0 ? path.moveTo(x, y) : path.lineTo(x, y);
  path.closePath();
  context.globalCompositeOperation = ink === null ? "destination-out" : "source-over";
  context.fillStyle = ink ?? PAPER;
  context.fill(path);
}

function changed(from: HTMLCanvasElement, step: Exclude<Step, { kind: "stroke" }>, size: Pixels): HTMLCanvasElement {
  const to = layer(size);
  const context = to.getContext("2d");
  if (!context) return to;
  if (step.kind === "crop") context.drawImage(from, -step.x, -step.y);
  else {
    context.translate(to.width / 2, to.height / 2);
    context.rotate(((step.clockwise ? 1 : -1) * Math.PI) / 2);
    context.drawImage(from, -from.width / 2, -from.height / 2);
  }
  return to;
}

/** A stored or taken picture as a ground, made no larger than its longest side may be. */
export async function groundOf(source: Blob | string): Promise<Ground> {
  const blob = typeof source === "string" ? await (await fetch(source)).blob() : source;
  const picture = await createImageBitmap(blob, { imageOrientation: "from-image" });
  const share = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  return { size: [Math.round(picture.width * share), Math.round(picture.height * share)], picture };
}

const LONGEST_SIDE = 2_000;
