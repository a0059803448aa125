// Taking back what was entered from paper.
import type { BeginEntry, CardLogEntry, Pass, TakeBackEntry } from "../core/log/entry.ts";
import { createEntryId, type EntryId } from "../core/log/entry-id.ts";
import { tallySittings } from "../core/sitting/sitting-tally.ts";
import { chartsOf } from "./charts.ts";
import { entryIds } from "./entry-ids.ts";
import { FailureError, found } from "./failure.ts";
import type { BoxRecord, Context, Session } from "./ports.ts";
import { replayPlacements } from "./replay.ts";
import type { PaperUndo } from "./views.ts";

/** A sitting that was entered from paper, and what is in it. */
interface OnPaper {
  readonly begin: BeginEntry;
  readonly events: readonly CardLogEntry[];
}

/** What was entered from paper last; null once anything has been recorded since. */
export async function paperUndo(session: Session, box: BoxRecord): Promise<PaperUndo | null> {
  const step = await lastStep(session, box);
  if (step.length === 0) return null;
  const events = step.flatMap((one) => one.events);
  const came = (pass: Pass): number =>
    new Set(events.flatMap((one) => (one.kind === "outcome" && one.pass === pass ? `${one.card} ${one.sitting}` : [])))
      .size;
  return {
    sittings: step.map(({ begin }) => begin.id),
    dates: [...new Set(step.map(({ begin }) => begin.date))].sort(),
    asked: came("visit"),
    introduced: came("introduction"),
  };
}

/** Takes back everything that these sittings on paper recorded, as one step. Fails with `conflict` once anything was recorded since. */
export const takeBackPaper = (context: Context, sittings: readonly EntryId[]): Promise<void> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const left = new Set<EntryId>();
    // A day on which nothing was due has nothing to take back.
    for (const id of sittings) if ((await session.boxes.eventsOfSitting(id)).length > 0) left.add(id);
    if (left.size === 0) throw new FailureError("conflict", "There is nothing left to take back.");
    while (left.size > 0) {
      const step = await lastStep(session, box);
      if (!left.has(step[0]?.begin.id ?? ""))
        throw new FailureError("conflict", "Something else has been recorded since. Take that back first.");
      // The last thing first, as a person would undo it.
      for (const one of step) {
        if (!left.delete(one.begin.id)) break;
        await takeBack(context, session, box, one);
      }
    }
  });

async function takeBack(context: Context, session: Session, box: BoxRecord, { begin, events }: OnPaper): Promise<void> {
  const { boxes } = session;
  const nextId = await entryIds(context, session, box.id);
  const at = context.clock();
  const entries = events
    .toReversed()
    .map(({ id }): TakeBackEntry => ({ id: nextId(), box: box.id, at, kind: "take-back", entry: id }));
  await boxes.appendEntries(entries);
  const placements = await boxes.placements(box.id, [...new Set(events.map(({ card }) => card))]);
  const charts = await chartsOf(session, box);
  await boxes.savePlacements(box.id, await replayPlacements(session, box, charts, placements));
  for (const tally of tallySittings(await boxes.entriesOfSitting(begin.id))) await boxes.saveSitting(box.id, tally);
}

/**
 * The sittings that were written last, newest first, if they come from paper (no answer of them was timed) and no card
 * has been touched since. Days that were entered together were written at one moment.
 */
async function lastStep(session: Session, box: BoxRecord): Promise<readonly OnPaper[]> {
  const { boxes } = session;
  const standing = new Set(
    (await boxes.sittings(box.id)).filter(({ asked, touched }) => asked + touched > 0).map(({ id }) => id),
  );
  const begun = (await boxes.entriesOfKind(box.id, ["begin"]))
    .filter((entry): entry is BeginEntry => entry.kind === "begin" && standing.has(entry.id))
    .sort((a, b) => b.at - a.at || (a.id < b.id ? 1 : -1));
  const step: OnPaper[] = [];
  for (const begin of begun.filter(({ at }) => at === begun[0]?.at)) {
    const events = await boxes.eventsOfSitting(begin.id);
    const isTimed = events.some((event) => event.kind === "outcome" && event.seconds !== null);
    if (isTimed || !(await boxes.sitting(begin.id))?.finished) break;
    step.push({ begin, events });
  }
  return step.length > 0 && !(await touchedSince(session, box, step)) ? step : [];
}

/** Whether a card was touched behind the entries of these sittings, and after they were written, which can be days later. */
function touchedSince({ boxes }: Session, box: BoxRecord, step: readonly OnPaper[]): Promise<boolean> {
  const ids = step.flatMap(({ events }) => events.map(({ id }) => id));
  const written = createEntryId(step[0]?.begin.at ?? 0, new Uint8Array(10));
  const last = [...ids, written].sort().at(-1) ?? written;
  // A sitting that was begun on the screen before them may have gone on.
  const own = step.map(({ begin }) => begin.id);
  return boxes.cardsTouchedSince(box.id, last, own);
}
