// Chance of recall by compartment, from a prior and the box's own first answers.
import { type Beta, betaMean } from "./beta.ts";

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
export const RECALL_PRIOR: Beta = { recalled: 9, missed: 1 };

/**
 * What is known of the chance of recall in compartments 1…K (beta-binomial conjugate update). Counts of one compartment
 * add up.
 */
export const recallPosterior = (counts: readonly RecallCount[], compartments: number): readonly Beta[] =>
  Array.from({ length: compartments }, (_, i) => {
    const own = counts.filter((count) => count.compartment === i + 1);
    return {
      recalled: RECALL_PRIOR.recalled + own.reduce((sum, count) => sum + count.recalled, 0),
      missed: RECALL_PRIOR.missed + own.reduce((sum, count) => sum + count.missed, 0),
    };
  });

/** Posterior mean chance of recall for compartments 1…K. */
export const recallByCompartment = (counts: readonly RecallCount[], compartments: number): readonly number[] =>
  recallPosterior(counts, compartments).map(betaMean);
