// Round numbers along an axis.

/** An axis from 0 to `top`, with marks at round numbers, both ends included. */
export interface Scale {
  readonly top: number;
  readonly marks: readonly number[];
}

/** Fewest steps of an axis; there are never more than twice as many and a half. */
const STEPS = 3;

/** The axis that holds values up to `most`: steps of 1, 2 or 5 times a power of ten, whole numbers only. */
export function niceScale(most: number): Scale {
  const rough = Math.max(most, STEPS) / STEPS;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = Math.max(1, ([5, 2, 1].find((one) => one * power <= rough) ?? 1) * power);
  const steps = Math.max(1, Math.ceil(most / step - 1e-9));
  return { top: steps * step, marks: Array.from({ length: steps + 1 }, (_, i) => i * step) };
}
