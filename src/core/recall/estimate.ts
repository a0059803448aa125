// Chance of recall by compartment, from a prior and the box's own first answers.

/** First answers counted in one compartment. */
export interface RecallCount {
  readonly compartment: number;
  readonly recalled: number;
  readonly missed: number;
}

/**
 * Beta prior of every compartment: mean 0.9 with the weight of ten answers. Common practice expects
 * about nine cards in ten to be recalled; ten answers are enough to let a box's own results take over soon.
 */
export const RECALL_PRIOR = { recalled: 9, missed: 1 } as const;

/**
 * Posterior mean chance of recall for compartments 1…K (beta-binomial conjugate update). Counts of one compartment
 * add up.
 */
export function recallByCompartment(counts: readonly RecallCount[], compartments: number): readonly number[] {
  return Array.from({ length: compartments }, (_, i) => {
    const own = counts.filter((count) => count.compartment === i + 1);
    const recalled = RECALL_PRIOR.recalled + own.reduce((sum, count) => sum + count.recalled, 0);
    const missed = RECALL_PRIOR.missed + own.reduce((sum, count) => sum + count.missed, 0);
    return recalled / (recalled + missed);
  });
}
