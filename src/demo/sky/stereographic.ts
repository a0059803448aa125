// Stereographic projection of the sky, seen from inside: north up, east to the left.
// Formulas: J. P. Snyder, Map Projections – A Working Manual (1987), equations 21-2 to 21-4 and 20-14, 20-15.
import type { SkyPosition } from "./sky-tables.ts";

/** A place in the plane: x grows to the west (right), y to the north (up); 1 is a radian at the centre. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** Projects a direction about a centre. The point opposite to the centre has no image. */
export function project(centre: SkyPosition, at: SkyPosition): PlanePoint {
  const [dec, dec0, hour] = [radians(at.dec), radians(centre.dec), radians(at.ra - centre.ra)];
  const cosine = Math.sin(dec0) * Math.sin(dec) + Math.cos(dec0) * Math.cos(dec) * Math.cos(hour);
  const scale = 2 / (1 + cosine);
  return {
    x: -scale * Math.cos(dec) * Math.sin(hour),
    y: scale * (Math.cos(dec0) * Math.sin(dec) - Math.sin(dec0) * Math.cos(dec) * Math.cos(hour)),
  };
}

/** The direction whose image is `point`: the inverse of `project`. */
export function unproject(centre: SkyPosition, point: PlanePoint): SkyPosition {
  const radius = Math.hypot(point.x, point.y);
  if (radius === 0) return centre;
  const angle = 2 * Math.atan(radius / 2);
  const dec0 = radians(centre.dec);
  const sine = Math.cos(angle) * Math.sin(dec0) + (point.y * Math.sin(angle) * Math.cos(dec0)) / radius;
  const east = -point.x * Math.sin(angle);
  const north = radius * Math.cos(dec0) * Math.cos(angle) - point.y * Math.sin(dec0) * Math.sin(angle);
  return {
    ra: (centre.ra + degrees(Math.atan2(east, north)) + 360) % 360,
    dec: degrees(Math.asin(Math.min(1, Math.max(-1, sine)))),
  };
}

/** The mean direction of some positions, safe across 0 h and the poles. */
export function meanDirection(positions: readonly SkyPosition[]): SkyPosition {
  let [x, y, z] = [0, 0, 0];
  for (const { ra, dec } of positions) {
    x += Math.cos(radians(dec)) * Math.cos(radians(ra));
    y += Math.cos(radians(dec)) * Math.sin(radians(ra));
    z += Math.sin(radians(dec));
  }
  return { ra: (degrees(Math.atan2(y, x)) + 360) % 360, dec: degrees(Math.atan2(z, Math.hypot(x, y))) };
}

/** Degrees between two directions along the great circle. */
export function separation(a: SkyPosition, b: SkyPosition): number {
  const { x, y } = project(a, b);
  return degrees(2 * Math.atan(Math.hypot(x, y) / 2));
}

const radians = (angle: number): number => (angle * Math.PI) / 180;
const degrees = (angle: number): number => (angle * 180) / Math.PI;
