// Why a card is out of the box, and the way back in.
import type { ReactNode } from "react";
import { Link } from "wouter";
import type { BoxView, CardHistory } from "../../app/views.ts";
import type { WithdrawEntry } from "../../core/log/entry.ts";
import type { SentEntry } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Trouble } from "../shell/states.tsx";
import { workshopAddress } from "../workshop/use-place.ts";
import { useRestore } from "../workshop/use-save.ts";
import { useLogged } from "./use-logged.ts";
import { withdrawalOf } from "./withdrawal.ts";

interface WithdrawnProps {
  readonly history: CardHistory;
  readonly box: BoxView;
  readonly day: number;
}

/** One way back, according to why the card was taken out. */
export function WithdrawnCard(props: WithdrawnProps) {
  const ways: Readonly<Record<WithdrawEntry["reason"], ReactNode>> = {
    hand: <BringBack {...props} />,
    angle: <AngleOff {...props} />,
    fact: <FactDeleted {...props} />,
  };
  return (
    <section className="card-actions" aria-label="By hand">
      {ways[withdrawalOf(props.history)]}
    </section>
  );
}

function BringBack({ history, box, day }: WithdrawnProps) {
  const act = useLogged();
  const entry = (): SentEntry => ({
    id: newId(),
    box: box.id,
    at: Date.now(),
    card: history.card.id,
    day,
    kind: "bring-back",
  });
  return (
    <>
      <BusyButton
        className="primary"
        busy={act.isPending}
        onClick={() => act.mutate({ entry: entry(), done: "The card is back in the box." })}
      >
        Bring back
      </BusyButton>
      {act.error ? <Trouble error={act.error} /> : null}
    </>
  );
}

function AngleOff({ history: { fact } }: WithdrawnProps) {
  return (
    <p>
      This angle is switched off;{" "}
      <Link href={workshopAddress({ subject: fact.subject, fact: fact.id })}>open its fact to choose it again</Link>.
    </p>
  );
}

function FactDeleted({ history: { fact } }: WithdrawnProps) {
  const restore = useRestore();
  return (
    <>
      <p>Its fact was deleted.</p>
      <BusyButton className="primary" busy={restore.isPending} onClick={() => restore.mutate(fact.id)}>
        Restore the fact
      </BusyButton>
    </>
  );
}
