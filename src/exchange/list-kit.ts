// A list straight to printed cards, without a library in between.
import { FailureError } from "../app/failure.ts";
import { toKitCard } from "../app/kit.ts";
import type { RowProblem } from "../app/views.ts";
import { cardsOf } from "../core/cards/cards.ts";
import { defaultAngles } from "../core/cards/default-angles.ts";
import type { KitCard } from "../core/kit/card-faces.ts";
import type { ListParcel } from "./import-list.ts";
import { createListReader } from "./read-list.ts";

/** The cards of a list, numbered from 1 in the order of its rows, and what is wrong with the other rows. */
export function listKit({ bytes, pictures }: ListParcel): {
  readonly cards: readonly KitCard[];
  readonly problems: readonly RowProblem[];
} {
  const byName = new Map([...pictures].map(([name, picture]) => [name.normalize("NFC").toLowerCase(), picture.hash]));
  const reader = createListReader(bytes, {}, (name) => byName.get(name.normalize("NFC").toLowerCase()) ?? null);
  if (!reader.ok) throw new FailureError("invalid-input", reader.error.message);
  const cards: KitCard[] = [];
  const problems: RowProblem[] = [];
  for (const item of reader.value.drafts()) {
    if (item.kind === "problems") problems.push(...item.problems);
    if (item.kind !== "fact") continue;
    const fact = { ...item.content, id: `line-${item.line}`, subject: "", angles: defaultAngles(item.content) };
    for (const card of cardsOf(fact)) cards.push(toKitCard(cards.length + 1, card));
  }
  return { cards, problems };
}
