// What may be done to a card by hand. Each is a log entry and can be taken back.
import { useState } from "react";
import type { BoxView, CardHistory } from "../../app/views.ts";
import type { SentEntry } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Trouble } from "../shell/states.tsx";
import { useLogged } from "./use-logged.ts";

interface ActionsProps {
  readonly history: CardHistory;
  readonly box: BoxView;
  readonly day: number;
  readonly compartments: number;
}

type Target = number | "kept" | "stock";

/** Move by hand, withdraw. */
export function CardActions({ history, box, day, compartments }: ActionsProps) {
  const [to, setTo] = useState("1");
  const act = useLogged();
  const base = () => ({ id: newId(), box: box.id, at: Date.now(), card: history.card.id, day });
  const target: Target = to === "kept" || to === "stock" ? to : Number(to);
  const withdraw = (): SentEntry => ({ ...base(), kind: "withdraw" });
  const move = (): SentEntry => ({ ...base(), kind: "move", to: target });
  const busy = act.isPending;
  return (
    <section className="card-actions" aria-label="By hand">
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
      <BusyButton busy={busy} onClick={() => act.mutate({ entry: move(), done: "The card is moved." })}>
        Move
      </BusyButton>
      <BusyButton
        className="quiet"
        busy={busy}
        onClick={() => act.mutate({ entry: withdraw(), done: "The card is out of the box." })}
      >
        Withdraw
      </BusyButton>
      {act.error ? <Trouble error={act.error} /> : null}
    </section>
  );
}
