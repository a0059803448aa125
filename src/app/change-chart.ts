// Another chart for a running box: every card is kept and goes to the bundle whose next visit suits it best.
import { rechartPlace } from "../core/box/rechart.ts";
import { type Chart, sameChart } from "../core/chart/chart.ts";
import type { ChartEntry } from "../core/log/entry.ts";
import { nextFreeDay, today } from "./days.ts";
import { entryIds } from "./entry-ids.ts";
import { FailureError, found } from "./failure.ts";
import type { BoxRecord, Context, PlacementRecord, Session } from "./ports.ts";
import { changePlacements } from "./replay.ts";
import { boxView } from "./set-up.ts";
import { unfinishedSitting } from "./sit.ts";
import type { ChartChange } from "./views.ts";

/**
 * Lets the box go by another chart from the first day on that has not been practised, and moves its cards; see
 * `rechartPlace`. Nothing changes if it goes by this chart already. Fails with `conflict` in the middle of a sitting.
 * A take-back entry that names the change undoes it.
 */
export const changeChart = (context: Context, { chart }: { readonly chart: Chart }): Promise<ChartChange> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    if (sameChart(box.chart, chart)) return { box: boxView(box), entry: null, moved: 0 };
    const now = await today(context, session, box);
    const open = await unfinishedSitting(session, box, now);
    if (open && open.asked + open.touched > 0) throw new FailureError("conflict", "Finish today's sitting first.");
    const nextId = await entryIds(context, session, box.id);
    const entry: ChartEntry = {
      id: nextId(),
      box: box.id,
      at: context.clock(),
      kind: "chart",
      chart,
      day: nextFreeDay(now),
    };
    await session.boxes.appendEntries([entry]);
    const changed = { ...box, chart };
    await session.boxes.saveBox(changed);
    return { box: boxView(changed), entry: entry.id, moved: await moveCards(session, box, entry) };
  });

/** Moves the cards of a box from its chart to that of the entry; how many there were to move. */
const moveCards = (session: Session, box: BoxRecord, { chart, day }: ChartEntry): Promise<number> =>
  changePlacements(session, box, (batch) =>
    batch.flatMap((placement): PlacementRecord[] => {
      const { state } = placement;
      const place = rechartPlace(box.chart, chart, day, state.place);
      return place === state.place ? [] : [{ ...placement, state: { ...state, place } }];
    }),
  );
