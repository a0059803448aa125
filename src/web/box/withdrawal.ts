// Why a withdrawn card is out of the box.
import type { CardHistory } from "../../app/views.ts";
import type { WithdrawEntry } from "../../core/log/entry.ts";

/** The reason of the last withdrawal that stands; by hand if none is known. */
export function withdrawalOf({ entries }: Pick<CardHistory, "entries">): WithdrawEntry["reason"] {
  const last = entries.findLast((entry) => entry.kind === "withdraw" && !entry.takenBack);
  return last?.kind === "withdraw" ? last.reason : "hand";
}
