// What is stored of printings: steps that the person took, each about some cards.
import type { CardId } from "../core/cards/cards.ts";
import type { PaperEvent, PaperRecord } from "../core/kit/paper-state.ts";
import type { PrintedFace } from "../core/kit/printed-face.ts";

/** A step: cards were printed, lost or damaged. */
export interface PrintStep {
  /** UUIDv7, later than that of every earlier step. */
  readonly id: string;
  readonly at: number;
  readonly kind: PaperEvent;
  readonly undone: boolean;
}

/** A card of a step; `face` is what was printed, null where nothing was. */
export interface PrintedCard {
  readonly card: CardId;
  readonly face: PrintedFace | null;
}

/** What one learner printed. */
export interface Prints {
  addPrintStep(step: Omit<PrintStep, "undone">, cards: readonly PrintedCard[]): Promise<void>;
  printStep(id: string): Promise<PrintStep | null>;
  lastPrintStepId(): Promise<string | null>;
  markPrintStepUndone(id: string): Promise<void>;
  /** The newest steps first, those undone left out, with how many cards each is about. */
  recentPrintSteps(limit: number): Promise<readonly { readonly step: PrintStep; readonly cards: number }[]>;
  /** Every card that was ever printed, or this one if it was, with what is known of its paper; steps undone count for nothing. */
  onPaper(card?: CardId): Promise<ReadonlyMap<CardId, PaperRecord>>;
}
