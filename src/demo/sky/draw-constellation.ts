// Draws one constellation as it stands in the sky: dark on pale, so that it prints well, and without
// a word that would give its name away.
import type { Figure, FigureStar, SkyPosition } from "./sky-tables.ts";
import { meanDirection, type PlanePoint, project, unproject } from "./stereographic.ts";

/** A star on the drawing: centre and radius in pixels, y downwards. */
export interface PlacedStar extends PlanePoint {
  readonly radius: number;
  /** Whether a line of the figure ends here. */
  readonly inFigure: boolean;
  readonly magnitude: number;
}

/** Measures of a drawing, in pixels; a small figure is enlarged to `largestScale` pixels per degree and no further. */
export const DRAWING = { width: 900, height: 675, margin: 84, largestScale: 78 } as const;

const COLOURS = { sky: "#f7f5ee", frame: "#d9d4c5", line: "#a4b0c4", star: "#1b2740", field: "#6b7488" } as const;
/** The disc of a star of magnitude 0, how much it shrinks with each magnitude, and the smallest disc. */
const DISC = { zero: 11.5, perMagnitude: 1.9, least: 2.4, most: 13.5 } as const;
/** Clear space between a disc and the lines that run to it. */
const GAP = 4.5;

/** An SVG picture of a figure, north up and east to the left; equal input gives equal text. */
export function drawConstellation(figure: Figure): string {
  const { width, height } = DRAWING;
  const stars = placeStars(figure);
  const paths = figure.paths.flatMap((path) => path.slice(1).map((end, i) => segment(stars, path[i], end)));
  const shown = stars.filter(({ x, y }) => x > 14 && y > 14 && x < width - 14 && y < height - 14);
  // Faint stars last in the list are drawn first, so that a bright disc covers them.
  const discs = [...shown].sort((a, b) => b.magnitude - a.magnitude).map(disc);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"`,
    ' role="img" aria-label="The stars of one constellation and the lines of its figure, north up">',
    `<rect width="${width}" height="${height}" fill="${COLOURS.sky}"/>`,
    `<rect x="6" y="6" width="${width - 12}" height="${height - 12}" rx="10" fill="none" stroke="${COLOURS.frame}" stroke-width="2"/>`,
    `<path d="${paths.join("")}" fill="none" stroke="${COLOURS.line}" stroke-width="3" stroke-linecap="round"/>`,
    ...discs,
    "</svg>",
  ].join("");
}

/** A drawing's size in pixels, and where a star comes to lie on it, y downwards. */
export interface DrawingFrame {
  readonly width: number;
  readonly height: number;
  readonly place: (star: SkyPosition) => PlanePoint;
}

/** The frame in which a figure is drawn. */
export function drawingFrame(figure: Figure): DrawingFrame {
  const ends = new Set(figure.paths.flat());
  const main = figure.stars.filter((_, i) => ends.has(i));
  const centre = middle(main);
  const toPixels = toFrame(main.map((star) => project(centre, star)));
  return { width: DRAWING.width, height: DRAWING.height, place: (star) => toPixels(project(centre, star)) };
}

/** Where the stars of a figure come to lie, in the order in which the figure lists them. */
export function placeStars(figure: Figure): readonly PlacedStar[] {
  const inFigure = new Set(figure.paths.flat());
  const { place } = drawingFrame(figure);
  return figure.stars.map((star, i) => ({
    ...place(star),
    radius: discRadius(star),
    inFigure: inFigure.has(i),
    magnitude: star.magnitude,
  }));
}

/** The direction in the middle of the frame, where north is exactly up: found from the mean in a few steps. */
function middle(stars: readonly SkyPosition[]): SkyPosition {
  let centre = meanDirection(stars);
  for (let i = 0; i < 4; i++) {
    const box = bounds(stars.map((star) => project(centre, star)));
    centre = unproject(centre, { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 });
  }
  return centre;
}

/** The largest even scale at which all points lie inside the margins, and the move to the middle of the picture. */
function toFrame(points: readonly PlanePoint[]): (point: PlanePoint) => PlanePoint {
  const { width, height, margin, largestScale } = DRAWING;
  const box = bounds(points);
  const scale = Math.min(
    (width - 2 * margin) / (box.right - box.left),
    (height - 2 * margin) / (box.top - box.bottom),
    (largestScale * 180) / Math.PI,
  );
  const [midX, midY] = [(box.left + box.right) / 2, (box.bottom + box.top) / 2];
  return ({ x, y }) => ({ x: width / 2 + (x - midX) * scale, y: height / 2 - (y - midY) * scale });
}

function bounds(points: readonly PlanePoint[]): { left: number; right: number; bottom: number; top: number } {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

const discRadius = ({ magnitude }: FigureStar): number =>
  Math.min(DISC.most, Math.max(DISC.least, DISC.zero - DISC.perMagnitude * magnitude));

/** A line between two stars that stops short of both discs; nothing if they nearly touch. */
function segment(stars: readonly PlacedStar[], start: number | undefined, end: number): string {
  const [a, b] = [stars[start ?? -1], stars[end]];
  if (!a || !b) throw new RangeError("a figure line names a star that is not listed");
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [from, to] = [a.radius + GAP, length - b.radius - GAP];
  if (to <= from) return "";
  const at = (distance: number): string =>
    `${px(a.x + ((b.x - a.x) * distance) / length)} ${px(a.y + ((b.y - a.y) * distance) / length)}`;
  return `M${at(from)}L${at(to)}`;
}

const disc = (star: PlacedStar): string =>
  `<circle cx="${px(star.x)}" cy="${px(star.y)}" r="${px(star.radius)}" fill="${star.inFigure ? COLOURS.star : COLOURS.field}"/>`;

const px = (value: number): string => String(Number(value.toFixed(1)));
