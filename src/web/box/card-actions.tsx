// What may be done to a card by hand. Each is a log entry and can be taken back.
import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import type { BoxView, CardHistory } from "../../app/views.ts";
import type { SentEntry } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { useRefresh } from "../data/queries.ts";
import { flush, onRefusal, post, unsent } from "../outbox/outbox.ts";
import { useNotify } from "../shell/notices.tsx";
import { Trouble } from "../shell/states.tsx";

interface ActionsProps {
  readonly history: CardHistory;
  readonly box: BoxView;
  readonly day: number;
  readonly compartments: number;
}

type Target = number | "kept" | "stock";

/** Withdraw, bring back, move by hand. */
export function CardActions({ history, box, day, compartments }: ActionsProps) {
  const [to, setTo] = useState("1");
  const act = useLogged();
  const base = () => ({ id: newId(), box: box.id, at: Date.now(), card: history.card.id, day });
  const target: Target = to === "kept" || to === "stock" ? to : Number(to);
  const withdraw = (): SentEntry => ({ ...base(), kind: "withdraw" });
  const bringBack = (): SentEntry => ({ ...base(), kind: "bring-back" });
  const move = (): SentEntry => ({ ...base(), kind: "move", to: target });
  const busy = act.isPending;
  return (
    <section className="card-actions" aria-label="By hand">
      {history.place?.kind === "withdrawn" ? (
        <button
          type="button"
          className="primary"
          disabled={busy}
          onClick={() => act.mutate({ entry: bringBack(), done: "The card is back in the box." })}
        >
          Bring back
        </button>
      ) : (
        <>
          <label className="field inline">
            <span>Move by hand to</span>
            <select value={to} onChange={(event) => setTo(event.target.value)}>
              {Array.from({ length: compartments }, (_, i) => `${i + 1}`).map((k) => (
                <option key={k} value={k}>
                  Compartment {k}
                </option>
              ))}
              <option value="kept">Kept shelf</option>
              <option value="stock">Stock</option>
            </select>
          </label>
          <button
            type="button"
            disabled={busy}
            onClick={() => act.mutate({ entry: move(), done: "The card is moved." })}
          >
            Move
          </button>
          <button
            type="button"
            className="quiet"
            disabled={busy}
            onClick={() => act.mutate({ entry: withdraw(), done: "The card is out of the box." })}
          >
            Withdraw
          </button>
        </>
      )}
      {act.error ? <Trouble error={act.error} /> : null}
    </section>
  );
}

/** Writes an entry, says what it did, and offers to take it back. */
function useLogged() {
  const refresh = useRefresh();
  const notify = useNotify();
  const write = async (entry: SentEntry): Promise<string | null> => {
    let refused: string | null = null;
    const stop = onRefusal((refusal) => {
      if (refusal.entry.id === entry.id) refused = refusal.reason;
    });
    post(entry);
    await flush();
    stop();
    return refused;
  };
  return useMutation({
    mutationFn: ({ entry }: { readonly entry: SentEntry; readonly done: string }) => write(entry),
    onSuccess: (refused, { entry, done }) => {
      const undo = (): void => {
        const back: SentEntry = { id: newId(), box: entry.box, at: Date.now(), kind: "take-back", entry: entry.id };
        void write(back).then((reason) => {
          if (!reason) notify("Taken back.");
          return refresh();
        });
      };
      if (unsent().some((one) => one.id === entry.id)) notify("Kept here until Longhold answers.");
      else if (!refused) notify(done, undo);
      return refresh();
    },
  });
}
