// Which printed version of a card is out there: a fold of what the person said was printed, lost or damaged.
import { isSameFace, type PrintedFace } from "./printed-face.ts";

/** What happened to a paper card. */
export type PaperEvent = "printed" | "lost" | "damaged";

/** A card's paper as it was last heard of. */
export interface PaperRecord {
  readonly last: PaperEvent;
  /** When that was said, in milliseconds since 1970. */
  readonly at: number;
  /** What was printed last, and when; null if the card never was. */
  readonly face: PrintedFace | null;
  readonly printedAt: number | null;
}

/**
 * How the paper stands to the card. `new` was never printed, `changed` says something else than the fact does now;
 * `withdrawn` is paper of a card that is not asked any more.
 */
export const PAPER_STATES = ["new", "current", "changed", "lost", "damaged", "withdrawn"] as const;

/** One of them. */
export type PaperState = (typeof PAPER_STATES)[number];

/** The state of a card that is asked, from what it says now and its record. */
export function paperState(now: PrintedFace, record: PaperRecord | undefined): Exclude<PaperState, "withdrawn"> {
  if (!record?.face) return "new";
  if (record.last !== "printed") return record.last;
  return isSameFace(now, record.face) ? "current" : "changed";
}

/** Whether a card in this state has to be printed so that the paper box is whole and up to date. */
export const needsPrinting = (state: PaperState): boolean => state !== "current" && state !== "withdrawn";
