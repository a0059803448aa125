// How long a day's work takes.

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

/** Middle value, or the mean of the two middle values; null for none. */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 ? upper : ((sorted[middle - 1] as number) + upper) / 2;
}
