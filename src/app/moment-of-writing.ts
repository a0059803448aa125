// The moment at which a sitting is written down, by which the latest of them is known.
import type { BoxRecord, Session } from "./ports.ts";

/** `now`, or the first moment after that of every other sitting where the clock stood still or ran back. */
export async function momentOfWriting({ boxes }: Session, box: BoxRecord, now: number): Promise<number> {
  const begun = await boxes.entriesOfKind(box.id, ["begin"]);
  return begun.reduce((moment, { at }) => Math.max(moment, at + 1), now);
}
