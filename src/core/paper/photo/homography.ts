// The map between a flat page and its picture: a plane homography, fitted to pairs of points by least squares
// (direct linear transformation with normalised points; Hartley and Zisserman, Multiple View Geometry, 4.1 and 4.4).

/** Coordinates x, y. */
export type Point = readonly [x: number, y: number];

/** Nine numbers, row by row. */
export type Homography = readonly number[];

/** A point and where it lies in the picture. */
export type PointPair = readonly [from: Point, to: Point];

/** Where a homography takes a point. */
export function mapPoint(h: Homography, [x, y]: Point): Point {
  const [a, b, c, d, e, f, g, i, j] = h as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const w = g * x + i * y + j;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** The homography that fits at least four pairs best; null if the points do not determine one. */
export function fitHomography(pairs: readonly PointPair[]): Homography | null {
  if (pairs.length < 4) return null;
  const from = normaliser(pairs.map((pair) => pair[0]));
  const to = normaliser(pairs.map((pair) => pair[1]));
  const normal = Array.from({ length: 8 }, () => new Array<number>(9).fill(0));
  for (const [source, target] of pairs) {
    const [x, y] = mapPoint(from, source);
    const [u, v] = mapPoint(to, target);
    // With the last of the nine numbers 1, each pair gives two linear equations for the other eight.
    addEquation(normal, [x, y, 1, 0, 0, 0, -u * x, -u * y, u]);
    addEquation(normal, [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  const solved = solveLinear(normal);
  return solved && multiply(multiply(inverseScaling(to), [...solved, 1]), from);
}

/** The homography that undoes another. */
export function invert(h: Homography): Homography {
  const at = (row: number, column: number): number => h[row * 3 + column] as number;
  const cofactor = (row: number, column: number): number => {
    const [r1, r2] = [(row + 1) % 3, (row + 2) % 3];
    const [c1, c2] = [(column + 1) % 3, (column + 2) % 3];
    return at(r1, c1) * at(r2, c2) - at(r1, c2) * at(r2, c1);
  };
  const determinant = at(0, 0) * cofactor(0, 0) + at(0, 1) * cofactor(0, 1) + at(0, 2) * cofactor(0, 2);
  return Array.from({ length: 9 }, (_, i) => cofactor(i % 3, Math.floor(i / 3)) / determinant);
}

function multiply(a: Homography, b: Homography): Homography {
  return Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [Math.floor(i / 3), i % 3];
    return [0, 1, 2].reduce((sum, k) => sum + (a[row * 3 + k] as number) * (b[k * 3 + column] as number), 0);
  });
}

/** Moves the points' middle to 0 and their mean distance from it to √2. */
function normaliser(points: readonly Point[]): Homography {
  const mean = (k: 0 | 1): number => points.reduce((sum, point) => sum + point[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const spread = points.reduce((sum, [x, y]) => sum + Math.hypot(x - mx, y - my), 0) / points.length || 1;
  const scale = Math.SQRT2 / spread;
  return [scale, 0, -scale * mx, 0, scale, -scale * my, 0, 0, 1];
}

const inverseScaling = ([scale = 1, , x = 0, , , y = 0]: Homography): Homography => [
  1 / scale,
  0,
  -x / scale,
  0,
  1 / scale,
  -y / scale,
  0,
  0,
  1,
];

/** Adds one equation, its right side last, to the normal equations. */
function addEquation(normal: number[][], equation: readonly number[]): void {
  for (let i = 0; i < 8; i++)
    for (let j = 0; j < 9; j++)
      (normal[i] as number[])[j] = (normal[i]?.[j] as number) + (equation[i] as number) * (equation[j] as number);
}

/** Pivots smaller than this, on normalised points, mean that the points lie on a line. */
const LEAST_PIVOT = 1e-9;

/** Gaussian elimination with pivots; each row ends with its right side. Null if there is no single solution. */
function solveLinear(rows: number[][]): readonly number[] | null {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    const pivot = rows.reduce(
      (best, row, i) => (i >= k && Math.abs(row[k] as number) > Math.abs(rows[best]?.[k] as number) ? i : best),
      k,
    );
    [rows[k], rows[pivot]] = [rows[pivot] as number[], rows[k] as number[]];
    const top = rows[k] as number[];
    if (Math.abs(top[k] as number) < LEAST_PIVOT) return null;
    rows.forEach((row, i) => {
      if (i === k) return;
      const share = (row[k] as number) / (top[k] as number);
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - share * (top[j] as number);
    });
  }
  return rows.map((row, k) => (row[n] as number) / (row[k] as number));
}
