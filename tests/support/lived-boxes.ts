// Boxes lived through date by date with chance: bundles, rest days, missed days under either policy, and cards that wait
// at the start. It shares nothing with the exact load: days are numbered here as they pass, and visits counted out.
import { xorshift128 } from "./sampled-piles.ts";

/** A compartment as on paper: its bundles take turns every `period / bundles` days, bundle 1 on days ≡ `offset`. */
export interface PaperCompartment {
  readonly period: number;
  readonly bundles: number;
  readonly offset: number;
}

/** What is lived through, from box day 1 on the first date. */
export interface LivedQuestion {
  readonly compartments: readonly PaperCompartment[];
  /** Chance of recall in each compartment. */
  readonly recall: readonly number[];
  /** What each date is. */
  readonly dates: readonly ("sitting" | "rest" | "missed")[];
  /** Whether a missed day has a number of its own. */
  readonly goesOn: boolean;
  /** Cards in the box at the start. */
  readonly waiting: readonly { readonly compartment: number; readonly due: number; readonly count: number }[];
  readonly newPerSitting: number;
  /** Seconds for a card recalled, missed and new. */
  readonly seconds: readonly [recalled: number, missed: number, fresh: number];
  readonly boxes: number;
  readonly seed: number;
}

/** What each box met on one date: a number for each box. */
export interface LivedDate {
  readonly reviews: Float64Array;
  readonly minutes: Float64Array;
}

/** Lives through the boxes; cost: one random number for every review of every box. */
export function liveBoxes(question: LivedQuestion): readonly LivedDate[] {
  const { dates, boxes, seed } = question;
  const next = xorshift128(seed);
  const chance = (): number => next() / 2 ** 32;
  const lived = dates.map(() => ({ reviews: new Float64Array(boxes), minutes: new Float64Array(boxes) }));
  for (let box = 0; box < boxes; box++)
    liveBox(question, chance, (i, reviews, seconds) => {
      const date = lived[i] as LivedDate;
      date.reviews[box] = reviews;
      date.minutes[box] = seconds / 60;
    });
  return lived;
}

/** The day on which a card comes up that is put into compartment k on `day`. */
function comesUp({ period, bundles, offset }: PaperCompartment, day: number): number {
  for (let visited = day; ; visited--) {
    const since = (((visited - offset) % period) + period) % period;
    if (since % (period / bundles) === 0) return visited + period;
  }
}

function liveBox(
  { compartments, recall, dates, goesOn, waiting, newPerSitting, seconds: [right, wrong, fresh] }: LivedQuestion,
  chance: () => number,
  met: (date: number, reviews: number, seconds: number) => void,
): void {
  const longest = Math.max(...compartments.map(({ period }) => period));
  const piles = compartments.map(() => new Int32Array(dates.length + longest + 2));
  for (const { compartment, due, count } of waiting) (piles[compartment - 1] as Int32Array)[due] = count;
  const put = (k: number, day: number): void => {
    const pile = piles[k] as Int32Array;
    const due = comesUp(compartments[k] as PaperCompartment, day);
    pile[due] = (pile[due] as number) + 1;
  };
  let day = 0;
  let seen = 0;
  for (const [i, kind] of dates.entries()) {
    if (kind === "sitting" || (kind === "missed" && goesOn)) day++;
    if (kind !== "sitting") continue;
    let reviews = 0;
    let seconds = newPerSitting * fresh;
    for (let k = compartments.length - 1; k >= 0; k--) {
      const pile = piles[k] as Int32Array;
      for (let due = seen + 1; due <= day; due++) {
        const cards = pile[due] as number;
        pile[due] = 0;
        for (let card = 0; card < cards; card++) {
          const recalled = chance() < (recall[k] as number);
          seconds += recalled ? right : wrong;
          if (!recalled) put(0, day);
          else if (k + 1 < compartments.length) put(k + 1, day);
        }
        reviews += cards;
      }
    }
    for (let card = 0; card < newPerSitting; card++) put(0, day);
    seen = day;
    met(i, reviews, seconds);
  }
}
