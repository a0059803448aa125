// How recall falls with the days since a card was last asked, from what a box knows: its recall at each visit.
//
// Wickelgren's power law m = λ (1 + β t)^−ψ (Wixted & Carpenter, Psychological Science 18, 2007, 133-134), λ = 1: right
// after its visit or second pass a card is known. β is fitted to the six retention intervals, from minutes to 42 days,
// of Carpenter, Pashler, Wixted & Vul (Memory & Cognition 36, 2008, experiment 1): 0.132075 a day. ψ is each box's own:
// the curve passes through the recall p that was measured after the wait w, which leaves p^(ln(1 + βt) / ln(1 + βw)).

/** β, a day. */
export const FORGETTING_RATE = 0.132075;

/** Chance, 0 to 1, that a card is recalled `days` after it was last asked, if it is recalled with chance p after `wait` days. */
export const recallAfter = (p: number, wait: number, days: number): number =>
  days <= 0 ? 1 : p ** (Math.log1p(FORGETTING_RATE * days) / Math.log1p(FORGETTING_RATE * wait));

/**
 * Chance that a card is recalled so many days after it was kept. A kept card has stood one recall more than one that
 * waits in the last compartment. It is taken for a card of one compartment more, whose mean wait has grown once more as
 * the last did, and which would be recalled as well as the last: an assumption, since a box measures nothing there.
 * `waits`: days that cards wait in compartments 1…K, in the mean.
 */
export function recallOnceKept(waits: readonly number[], lastRecall: number, days: number): number {
  return recallAfter(lastRecall, waitBeyond(waits), days);
}

/** The wait that a further compartment would have: grown as much as the last one did, at least doubled if there is none. */
export function waitBeyond(waits: readonly number[]): number {
  const last = waits.at(-1) ?? 1;
  const before = waits.at(-2);
  return before === undefined ? 2 * last : Math.max(last, (last * last) / before);
}
