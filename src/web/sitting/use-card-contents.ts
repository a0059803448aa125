// Fetches what stands on the cards ahead, in batches, so that no answer waits for the network.
import { useEffect, useState } from "react";
import type { Card, CardId } from "../../core/cards/cards.ts";
import { api, pictureUrl } from "../client.ts";

const BATCH = 40;
const RETRY_MS = 2_000;
const PICTURES_AHEAD = 6;

/** What is known of the cards' contents so far. */
export interface CardContents {
  readonly cards: ReadonlyMap<CardId, Card>;
  /** Cards that the server does not know any more. */
  readonly gone: ReadonlySet<CardId>;
}

/** Contents of `ids`, fetched from the front; `ids` must keep its identity while nothing changes. */
export function useCardContents(ids: readonly CardId[]): CardContents {
  const [contents, setContents] = useState<CardContents>({ cards: new Map(), gone: new Set() });
  useEffect(() => {
    let stopped = false;
    const fetchAll = async (): Promise<void> => {
      for (let at = 0; at < ids.length && !stopped; ) {
        const batch = ids.slice(at, at + BATCH);
        const read = await api.readCards(batch).catch(() => null);
        if (stopped) return;
        if (read) {
          setContents((known) => extend(known, batch, read.cards));
          at += BATCH;
        } else await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
      }
    };
    void fetchAll();
    return () => {
      stopped = true;
    };
  }, [ids]);
  return contents;
}

/** Fetches the pictures of the next few cards after `card` before they are needed. */
export function usePicturesAhead(ids: readonly CardId[], card: CardId | null, cards: ReadonlyMap<CardId, Card>): void {
  useEffect(() => {
    const from = card === null ? -1 : ids.indexOf(card);
    for (const id of ids.slice(from + 1, from + 1 + PICTURES_AHEAD)) {
      const next = cards.get(id);
      const picture = next?.prompt.picture ?? next?.answer.picture;
      if (picture) new Image().src = pictureUrl(picture);
    }
  }, [ids, card, cards]);
}

function extend(known: CardContents, asked: readonly CardId[], read: readonly Card[]): CardContents {
  const cards = new Map(known.cards);
  for (const card of read) cards.set(card.id, card);
  const gone = new Set(known.gone);
  for (const id of asked) if (!cards.has(id)) gone.add(id);
  return { cards, gone };
}
