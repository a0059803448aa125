// How long a day's work takes.
import type { Steps } from "./distribution.ts";

/** Seconds that one card costs. */
export interface Pace {
  /** A card recalled at its visit. */
  readonly recalled: number;
  /** A missed card, its second pass included. */
  readonly missed: number;
  /** A new card: first look and introduction. */
  readonly fresh: number;
}

/** Until there are measurements (common practice). */
export const DEFAULT_PACE: Pace = { recalled: 8, missed: 20, fresh: 45 };

/** Measurements needed before a learner's own median replaces a default. */
export const ENOUGH_MEASUREMENTS = 20;

/** Minutes for a day of expected reviews, misses among them, and new cards. */
export const minutesFor = (
  pace: Pace,
  day: { readonly reviews: number; readonly missed: number; readonly newCards: number },
): number => ((day.reviews - day.missed) * pace.recalled + day.missed * pace.missed + day.newCards * pace.fresh) / 60;

/** Seconds counted in whole steps of `unit` seconds. */
export interface Clicks {
  readonly unit: number;
  readonly steps: Steps;
}

/** Most steps that a card may cost. The fewer, the sooner a day's seconds are added up. */
const MOST_STEPS = 5;

/**
 * The grid on which a day's seconds are added up: the smallest whole numbers of steps, up to five, whose ratio is
 * nearest to that of the two costs. The dearer cost is kept as it is. With the defaults of 8 and 20 s the unit is 4 s and
 * nothing is lost; else the cheaper is off by at most a tenth of the dearer, which `minutesOf` sets right in mean and sd.
 */
export function clicksFor({ recalled, missed }: Pick<Pace, "recalled" | "missed">): Clicks {
  const dearer = Math.max(recalled, missed);
  const cheaper = Math.min(recalled, missed);
  if (!(dearer > 0)) return { unit: 1, steps: { recalled: 0, missed: 0 } };
  let best = { many: 1, few: Math.round(cheaper / dearer), off: Number.POSITIVE_INFINITY };
  for (let many = 1; many <= MOST_STEPS; many++) {
    const few = Math.round((many * cheaper) / dearer);
    const off = Math.abs(few / many - cheaper / dearer);
    if (off < best.off - 1e-9) best = { many, few, off };
  }
  const { many, few } = best;
  return {
    unit: dearer / many,
    steps: recalled >= missed ? { recalled: many, missed: few } : { recalled: few, missed: many },
  };
}

/** Middle value, or the mean of the two middle values; null for none. */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}
