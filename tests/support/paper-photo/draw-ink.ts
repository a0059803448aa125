// Strokes of a pen on the drawing of a page.
import type { GreyPage } from "../pdf-tools.ts";

/** Millimetres from the top left corner of the page. */
export type Place = readonly [x: number, y: number];

/** A pen: how wide its stroke is in millimetres, how dark its ink (0 … 1), and how much of the stroke it skips (0 … 1). */
export interface Pen {
  readonly width: number;
  readonly dark: number;
  readonly grain: number;
}

/** Draws a line through places. Crossing ink is no darker than the darkest of it. */
export function drawInk(page: GreyPage, dotsPerMm: number, line: readonly Place[], pen: Pen): void {
  const before = new Map<number, number>();
  for (let k = 0; k + 1 < line.length; k++)
    drawPiece(page, dotsPerMm, [line[k] as Place, line[k + 1] as Place], pen, before);
}

function drawPiece(
  { width, height, dots }: GreyPage,
  scale: number,
  [from, to]: readonly [Place, Place],
  pen: Pen,
  before: Map<number, number>,
): void {
  const radius = (pen.width / 2) * scale;
  const [ax, ay, bx, by] = [from[0] * scale, from[1] * scale, to[0] * scale, to[1] * scale];
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy || 1;
  const pad = Math.ceil(radius) + 1;
  for (let y = Math.max(0, Math.floor(Math.min(ay, by)) - pad); y <= Math.min(height - 1, Math.max(ay, by) + pad); y++)
    for (
      let x = Math.max(0, Math.floor(Math.min(ax, bx)) - pad);
      x <= Math.min(width - 1, Math.max(ax, bx) + pad);
      x++
    ) {
      const along = Math.min(1, Math.max(0, ((x + 0.5 - ax) * dx + (y + 0.5 - ay) * dy) / long));
      const away = Math.hypot(x + 0.5 - ax - along * dx, y + 0.5 - ay - along * dy);
      const cover = Math.min(1, Math.max(0, radius + 0.5 - away));
      if (cover === 0) continue;
      const at = y * width + x;
      const clean = before.get(at) ?? (dots[at] as number);
      before.set(at, clean);
      // Paper under a dry pen shows through in specks that depend on the place only.
      const speck = ((Math.imul(x + 7 * y, 2654435761) >>> 8) & 255) / 255;
      const ink = pen.dark * cover * (speck < pen.grain ? 0.35 : 1);
      dots[at] = Math.min(dots[at] as number, clean * (1 - ink));
    }
}
