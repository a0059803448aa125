// What the person says about paper: these cards are printed, those are lost or damaged. Each is one step that can be undone.
import { printedNumber } from "../core/cards/card-number.ts";
import type { PaperEvent } from "../core/kit/paper-state.ts";
import { printedFace } from "../core/kit/printed-face.ts";
import { idSeries } from "./entry-ids.ts";
import { FailureError, found } from "./failure.ts";
import type { LibraryCard } from "./kit.ts";
import type { CardRecord, Context, Session } from "./ports.ts";
import type { PrintedCard, PrintStep } from "./print-port.ts";

/** Records that these versions of these cards went to paper. Fails with `not-found` for a card that is not there any more. */
export const recordPrinted = (
  context: Context,
  cards: readonly Pick<LibraryCard, "id" | "card">[],
): Promise<PrintStep> =>
  context.store.write(async (session) => {
    const known = new Set((await session.library.cards(cards.map(({ id }) => id))).map(({ id }) => id));
    // A subject may have been removed since it was printed; of the others nothing is lost by that.
    const still = cards.filter(({ id }) => known.has(id));
    if (still.length === 0) throw new FailureError("not-found", "None of these cards is there any more.");
    return addStep(
      context,
      session,
      "printed",
      still.map(({ id, card }) => ({ card: id, face: printedFace(card) })),
    );
  });

/** Records that paper cards are lost or damaged. Fails with `not-found` for a number that no card has, or whose card was never printed. */
export const recordMissing = (
  context: Context,
  kind: Exclude<PaperEvent, "printed">,
  numbers: readonly number[],
): Promise<PrintStep> =>
  context.store.write(async (session) => {
    if (numbers.length === 0) throw new FailureError("invalid-input", "No card is named.");
    const cards = await cardsNumbered(session, new Set(numbers));
    const onPaper = await session.prints.onPaper();
    const never = cards.find(({ id }) => !onPaper.get(id)?.face);
    if (never)
      throw new FailureError(
        "not-found",
        `Card ${printedNumber(never.number)} was never recorded as printed, so no paper of it can be ${kind}.`,
      );
    return addStep(
      context,
      session,
      kind,
      cards.map(({ id }) => ({ card: id, face: null })),
    );
  });

async function cardsNumbered({ library }: Session, wanted: ReadonlySet<number>): Promise<readonly CardRecord[]> {
  const cards: CardRecord[] = [];
  for (const { id } of await library.subjects())
    cards.push(...(await library.cardsOfSubject(id)).filter(({ number }) => wanted.has(number)));
  const known = new Set(cards.map(({ number }) => number));
  const unknown = [...wanted].find((number) => !known.has(number));
  if (unknown !== undefined) throw new FailureError("not-found", `No card has the number ${printedNumber(unknown)}.`);
  return cards;
}

async function addStep(
  context: Context,
  { prints }: Session,
  kind: PaperEvent,
  cards: readonly PrintedCard[],
): Promise<PrintStep> {
  const id = idSeries(context, (await prints.lastPrintStepId()) ?? undefined)();
  const step = { id, at: context.clock(), kind };
  await prints.addPrintStep(step, cards);
  return { ...step, undone: false };
}

/** Takes a step back, as if it had never been said; the paper is again what the other steps say of it. */
export const undoPrintStep = (context: Context, id: string): Promise<PrintStep> =>
  context.store.write(async ({ prints }) => {
    const step = found(await prints.printStep(id), "printing");
    if (step.undone) throw new FailureError("conflict", "This is taken back already.");
    await prints.markPrintStepUndone(id);
    return { ...step, undone: true };
  });
