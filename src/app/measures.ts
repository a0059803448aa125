// What a box has measured about its learner, with sensible beginnings until it has.
import { chartOfSitting } from "../core/box/chart-timeline.ts";
import { compartmentAfter } from "../core/box/rechart.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { DEFAULT_PACE, ENOUGH_MEASUREMENTS, median, type Pace } from "../core/load/minutes.ts";
import { type RecallCount, recallByCompartment } from "../core/recall/estimate.ts";
import { chartsOf } from "./charts.ts";
import type { BoxRecord, Session } from "./ports.ts";

/** Newest entries that are looked at: recent enough to follow the learner, many enough to be steady. */
const RECENT = { visits: 2_000, seconds: 500 } as const;

/**
 * First answers of the newest visits, by compartment of the box's chart. Those of a past chart count for the compartment
 * to which their cards would have been moved.
 */
export async function recentVisits(session: Session, box: BoxRecord): Promise<readonly RecallCount[]> {
  const charts = await chartsOf(session, box);
  const visits = await session.boxes.recentVisits(box.id, RECENT.visits);
  return visits.flatMap((count) => {
    const then = chartOfSitting(charts, count.sitting);
    const known = count.compartment >= 1 && count.compartment <= compartmentCount(then);
    return known ? [{ ...count, compartment: compartmentAfter(then, box.chart, count.compartment) }] : [];
  });
}

/** Chance of recall in compartments 1…K, from the prior and the newest visits. */
export const recallOf = async (session: Session, box: BoxRecord): Promise<readonly number[]> =>
  recallByCompartment(await recentVisits(session, box), compartmentCount(box.chart));

/** Seconds per card: the learner's own medians where enough was measured, else the defaults. */
export async function paceOf(
  { boxes }: Session,
  box: BoxRecord,
): Promise<{ readonly pace: Pace; readonly measured: boolean }> {
  const seconds = await boxes.recentSeconds(box.id, RECENT.seconds);
  const own = (sort: keyof Pace): number | null => {
    const values = seconds.filter((one) => one.sort === sort).map((one) => one.seconds);
    return values.length >= ENOUGH_MEASUREMENTS ? median(values) : null;
  };
  const recalled = own("recalled");
  const missed = own("missed");
  const fresh = own("fresh");
  // A missed card is asked again in the second pass, a new one is looked at first: about twice the answer's time.
  const pace: Pace = {
    recalled: recalled ?? DEFAULT_PACE.recalled,
    missed: missed === null ? DEFAULT_PACE.missed : missed * 2,
    fresh: fresh === null ? DEFAULT_PACE.fresh : fresh * 2,
  };
  return { pace, measured: recalled !== null };
}
