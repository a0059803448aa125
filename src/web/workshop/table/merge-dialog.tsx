// One fact out of several.
import { useState } from "react";
import type { Fact } from "../../../core/facts/fact.ts";
import { BulkDialog, type BulkDialogProps } from "./bulk-dialog.tsx";
import { KeepChoice } from "./keep-choice.tsx";

/** Which of the facts is kept. */
export function MergeDialog({ facts, ...props }: BulkDialogProps & { readonly facts: readonly Fact[] }) {
  const [into, setInto] = useState(facts.at(-1)?.id ?? "");
  return (
    <BulkDialog
      {...props}
      chosen={{ facts: facts.map((fact) => fact.id) }}
      title="Merge into one fact"
      yes="Merge"
      change={{ kind: "merge", into }}
    >
      <KeepChoice facts={facts} into={into} set={setInto} />
      <p className="hint">
        The others' tags, notes, stories and picture go to it; then they are deleted and their cards leave the box.
      </p>
    </BulkDialog>
  );
}
