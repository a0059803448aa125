// How the paper stands to the box: which cards were never printed, say something else by now, are lost or damaged, and
// which paper belongs to cards that are not asked any more.
import { type CardId, cardFrom } from "../core/cards/cards.ts";
import { needsPrinting, PAPER_STATES, type PaperRecord, type PaperState, paperState } from "../core/kit/paper-state.ts";
import { type FaceChange, faceChanges, printedFace } from "../core/kit/printed-face.ts";
import { found } from "./failure.ts";
import { cardsOfSubject, type LibraryCard, toKitCard } from "./kit.ts";
import type { CardRecord, Context, Session } from "./ports.ts";
import type { PrintStep } from "./print-port.ts";

/** A card with the state of its paper. */
export interface CardOnPaper extends LibraryCard {
  readonly state: PaperState;
  readonly record: PaperRecord | undefined;
}

/** A paper card that is not as it should be. */
export interface OutdatedCard {
  readonly card: CardId;
  readonly number: number;
  readonly fact: string;
  readonly state: PaperState;
  /** When it was printed last, in milliseconds since 1970. */
  readonly printedAt: number | null;
  /** In what the paper and the fact differ. */
  readonly changes: readonly FaceChange[];
}

/** The paper of some subjects. */
export interface PaperCardsView {
  readonly counts: Readonly<Record<PaperState, number>>;
  /** Cards on paper that are changed, lost, damaged or withdrawn, by number; at most 500. */
  readonly outdated: readonly OutdatedCard[];
  /** The newest steps that can be taken back, newest first. */
  readonly steps: readonly (PrintStep & { readonly cards: number })[];
}

/** The paper of one card; `printedAt` is null if it was never printed. */
export type CardPaperView = Pick<OutdatedCard, "state" | "printedAt" | "changes">;

/** The paper of one fact: cards on paper, by how they stand. */
export interface FactPaperView {
  readonly states: Readonly<Partial<Record<PaperState, number>>>;
}

const MOST_OUTDATED = 500;
const RECENT_STEPS = 5;

/** All cards of a subject with the state of their paper, by number; cards that are out of the box last. */
export async function cardsOnPaper(session: Session, subject: string): Promise<readonly CardOnPaper[]> {
  const records = await session.prints.onPaper();
  const out = await withdrawn(session);
  const cards = (await cardsOfSubject(session, subject)).map((one): CardOnPaper => {
    const record = records.get(one.id);
    return { ...one, record, state: out.has(one.id) ? "withdrawn" : paperState(printedFace(one.card), record) };
  });
  return cards;
}

/** Cards that were taken out of the box. */
async function withdrawn({ boxes }: Session): Promise<ReadonlySet<CardId>> {
  const box = await boxes.box();
  if (!box) return new Set();
  const count = (await boxes.countPlaces(box.id)).find(({ place }) => place === "withdrawn")?.count ?? 0;
  if (count === 0) return new Set();
  return new Set((await boxes.placed(box.id, { place: "withdrawn", limit: count })).map(({ card }) => card));
}

/** Of these cards, those to print so that the paper is whole and up to date. */
export const toBePrinted = (cards: readonly CardOnPaper[]): readonly CardOnPaper[] =>
  cards.filter(({ state }) => needsPrinting(state));

/** How the paper of some subjects stands. Fails with `not-found` for a subject that is not there. */
export const paperCards = (context: Context, subjects: readonly string[]): Promise<PaperCardsView> =>
  context.store.read(async (session) => {
    const counts = Object.fromEntries(PAPER_STATES.map((state) => [state, 0])) as Record<PaperState, number>;
    const outdated: OutdatedCard[] = [];
    for (const subject of new Set(subjects)) {
      const cards = await cardsOnPaper(session, subject);
      for (const one of cards) {
        // Without paper there is nothing to take out.
        if (one.state === "withdrawn" && !one.record?.face) continue;
        counts[one.state] += 1;
        if (one.state !== "current" && one.state !== "new") outdated.push(outdatedCard(one));
      }
      const gone = await goneCards(session, subject, new Set(cards.map(({ id }) => id)));
      counts.withdrawn += gone.length;
      outdated.push(...gone);
    }
    const steps = (await session.prints.recentPrintSteps(RECENT_STEPS)).map(({ step, cards }) => ({ ...step, cards }));
    return { counts, outdated: outdated.sort((a, b) => a.number - b.number).slice(0, MOST_OUTDATED), steps };
  });

/** Paper of cards whose fact was deleted or whose angle was given up. */
async function goneCards(
  { library, prints }: Session,
  subject: string,
  asked: ReadonlySet<CardId>,
): Promise<readonly OutdatedCard[]> {
  const records = await prints.onPaper();
  return (await library.cardsOfSubject(subject)).flatMap(({ id, number, fact }) => {
    const record = records.get(id);
    if (!record?.face || asked.has(id)) return [];
    return [{ card: id, number, fact, state: "withdrawn" as const, printedAt: record.printedAt, changes: [] }];
  });
}

const outdatedCard = (one: CardOnPaper): OutdatedCard => ({
  card: one.id,
  number: one.card.number,
  fact: one.fact,
  state: one.state,
  printedAt: one.record?.printedAt ?? null,
  changes: one.record?.face ? faceChanges(one.record.face, printedFace(one.card)) : [],
});

/** How the paper of one card stands, without a look at any other. Fails with `not-found`. */
export const cardPaper = (context: Context, id: CardId): Promise<CardPaperView> =>
  context.store.read(async (session) => paperOfCard(session, found((await session.library.cards([id]))[0], "card")));

/** How many paper cards of a fact stand how; cards that never were on paper are left out. */
export const factPaper = (context: Context, fact: string): Promise<FactPaperView> =>
  context.store.read(async (session) => {
    const states: Partial<Record<PaperState, number>> = {};
    for (const card of await session.library.cardsOfFact(fact)) {
      const { state, printedAt } = await paperOfCard(session, card);
      if (printedAt !== null) states[state] = (states[state] ?? 0) + 1;
    }
    return { states };
  });

async function paperOfCard({ library, boxes, prints }: Session, card: CardRecord): Promise<CardPaperView> {
  const { id, number, fact, angle } = card;
  const record = (await prints.onPaper(id)).get(id);
  if (!record?.face) return { state: "new", printedAt: null, changes: [] };
  const { printedAt, face } = record;
  const from = await library.fact(fact);
  const box = await boxes.box();
  const placed = box && (await boxes.placement(box.id, id));
  if (!from || from.deleted || !from.fact.angles.includes(angle) || placed?.state.place.kind === "withdrawn")
    return { state: "withdrawn", printedAt, changes: [] };
  const now = printedFace(toKitCard(number, cardFrom(from.fact, angle)));
  return { state: paperState(now, record), printedAt, changes: faceChanges(face, now) };
}
