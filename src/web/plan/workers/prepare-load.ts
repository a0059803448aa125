// What a load is worked out from, with all of it remembered that does not hang on how many cards there are: under a
// moving slider the dates and the walks of cards stay the same, and only the numbers of cards change.
import { type Cohort, cohortsOf, type Walk, type WalkedCohort, walkCohorts } from "../../../core/load/cohorts.ts";
import { type DatedDay, datedDays } from "../../../core/load/dated-days.ts";
import type { ExactLoadQuestion } from "../../../core/load/exact-load.ts";
import { type PlanQuestion, toBoxDays } from "../../../core/load/plan-load.ts";

/** A question laid out. */
export interface PreparedLoad {
  readonly dates: readonly DatedDay[];
  /** The question in box days. */
  readonly box: ExactLoadQuestion;
  readonly cohorts: readonly WalkedCohort[];
}

interface Memory {
  readonly key: string;
  readonly dates: readonly DatedDay[];
  readonly walks: Map<string, Walk>;
}

/** Makes a function that lays questions out; it remembers the last one. */
export function createPreparer(): (question: PlanQuestion) => PreparedLoad {
  let memory: Memory | null = null;
  return (question) => {
    const { chart, recall, calendar, last, from, dates, missed } = question;
    const key = JSON.stringify({ chart, recall, calendar, last, from, dates, missed });
    if (memory?.key !== key) memory = { key, dates: datedDays(question), walks: new Map() };
    const box = toBoxDays(question, memory.dates);
    return { dates: memory.dates, box, cohorts: walkAgain(box, memory.walks) };
  };
}

const placeOf = ({ start }: Cohort): string => `${start.compartment} ${start.due}`;

/** The cohorts with their walks; all are walked anew if one of them stands where none stood before. */
function walkAgain(box: ExactLoadQuestion, walks: Map<string, Walk>): readonly WalkedCohort[] {
  const known = cohortsOf(box).flatMap((cohort) => {
    const walk = walks.get(placeOf(cohort));
    return walk ? [{ ...cohort, asked: walk.asked, missed: walk.missed }] : [null];
  });
  if (known.every((cohort) => cohort !== null)) return known;
  const walked = walkCohorts(box);
  for (const cohort of walked) walks.set(placeOf(cohort), cohort);
  return walked;
}
