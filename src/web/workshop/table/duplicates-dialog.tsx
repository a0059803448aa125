// Facts that say the same, group by group, merged one group at a time.
import { useQuery } from "@tanstack/react-query";
import { useId, useState } from "react";
import type { Fact } from "../../../core/facts/fact.ts";
import { api } from "../../client.ts";
import { KEYS } from "../../data/queries.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Loaded } from "../../shell/states.tsx";
import { useModal } from "../../shell/use-modal.ts";
import { counted } from "../../words.ts";
import { KeepChoice } from "./keep-choice.tsx";
import { useBulk } from "./use-bulk.ts";

/** What says the same in a subject. */
export function DuplicatesDialog({ subject, close }: { readonly subject: string; readonly close: () => void }) {
  const dialog = useModal();
  const id = useId();
  const found = useQuery({ queryKey: [...KEYS.facts, "duplicates", subject], queryFn: () => api.duplicates(subject) });
  return (
    <dialog ref={dialog} className="dialog bulk-dialog" aria-labelledby={id} onCancel={close}>
      <h2 id={id}>Duplicates</h2>
      <Loaded query={found} what="the duplicates">
        {({ groups, total }) => (
          <>
            <p role="status">
              {total === 0
                ? "No two facts of this subject say the same."
                : `${counted(total, "group")} of facts say the same but for capitals, accents, marks or spaces.`}
            </p>
            {groups.map((facts) => (
              <Group key={facts.map((fact) => fact.id).join(" ")} facts={facts} />
            ))}
          </>
        )}
      </Loaded>
      <div className="row end">
        <button type="button" onClick={close}>
          Close
        </button>
      </div>
    </dialog>
  );
}

function Group({ facts }: { readonly facts: readonly Fact[] }) {
  const [into, setInto] = useState(facts[0]?.id ?? "");
  const { run, busy } = useBulk(() => undefined);
  const merge = (): void => run({ chosen: { facts: facts.map((fact) => fact.id) }, change: { kind: "merge", into } });
  return (
    <div className="duplicate-group">
      <KeepChoice facts={facts} into={into} set={setInto} />
      <BusyButton busy={busy} onClick={merge}>
        Merge these
      </BusyButton>
    </div>
  );
}
