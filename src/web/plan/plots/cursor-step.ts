// Where a plot's cursor goes when a key is pressed.

/** The row of points that a cursor runs along. */
export interface Row {
  readonly count: number;
  /** A step of PageUp (1) or PageDown (-1) from a point. */
  readonly leap: (at: number, direction: 1 | -1) => number;
}

/** The point that a key leads to from `at`, within the row; null if the key means nothing here. */
export function cursorStep(key: string, at: number, { count, leap }: Row): number | null {
  const to = target(key, at, count, leap);
  return to === null ? null : Math.min(count - 1, Math.max(0, to));
}

function target(key: string, at: number, count: number, leap: Row["leap"]): number | null {
  switch (key) {
    case "ArrowRight":
    case "ArrowUp":
      return at + 1;
    case "ArrowLeft":
    case "ArrowDown":
      return at - 1;
    case "Home":
      return 0;
    case "End":
      return count - 1;
    case "PageUp":
      return leap(at, 1);
    case "PageDown":
      return leap(at, -1);
    default:
      return null;
  }
}
