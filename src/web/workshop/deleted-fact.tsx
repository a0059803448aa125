// A fact that was deleted can still be looked at, and brought back.
import { useQuery } from "@tanstack/react-query";
import { cardId } from "../../core/cards/cards.ts";
import type { Fact } from "../../core/facts/fact.ts";
import { withdrawalOf } from "../box/withdrawal.ts";
import { api } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useRestore } from "./use-save.ts";

/** Whether a fact was deleted, as far as one of its cards tells: it left the box for that reason. */
export function useDeleted(fact: Fact | null): boolean {
  const angle = fact?.angles[0];
  const id = fact && angle ? cardId(fact.id, angle) : "";
  const card = useQuery({
    queryKey: [...KEYS.card, id],
    queryFn: () => api.card(id),
    enabled: id !== "",
    retry: false,
  });
  return card.data?.place?.kind === "withdrawn" && withdrawalOf(card.data) === "fact";
}

/** Says that the fact was deleted, with the way back. */
export function DeletedFact({ id, restored }: { readonly id: string; readonly restored: () => void }) {
  const restore = useRestore(restored);
  return (
    <div className="trouble">
      <p>This fact was deleted. Restore it to change it; its cards then go back to where they were.</p>
      <BusyButton busy={restore.isPending} onClick={() => restore.mutate(id)}>
        Restore the fact
      </BusyButton>
    </div>
  );
}
