// A list straight to printed cards, without a library in between.
import { FailureError } from "../app/failure.ts";
import { toKitCard } from "../app/kit.ts";
import type { RowProblem } from "../app/views.ts";
import { cardsOf } from "../core/cards/cards.ts";
import type { KitCard } from "../core/kit/card-faces.ts";
import type { ListParcel } from "./import-list.ts";
import { mediaFinder } from "./list-media.ts";
import { asFact, createListReader } from "./read-list.ts";

/** The cards of a list, numbered from 1 in the order of its rows, and what is wrong with the other rows. */
export function listKit({ bytes, media }: ListParcel): {
  readonly cards: readonly KitCard[];
  readonly problems: readonly RowProblem[];
} {
  const none = new Set<string>();
  const reader = createListReader(bytes, {}, mediaFinder(media, { pictures: none, sounds: none }));
  if (!reader.ok) throw new FailureError("invalid-input", reader.error.message);
  const cards: KitCard[] = [];
  const problems: RowProblem[] = [];
  for (const item of reader.value.drafts()) {
    if (item.kind === "problems") problems.push(...item.problems);
    if (item.kind !== "fact") continue;
    for (const card of cardsOf(asFact(item))) cards.push(toKitCard(cards.length + 1, card));
  }
  return { cards, problems };
}
