// Giving tags to many facts, and taking them away.
import { useState } from "react";
import type { BulkOrder } from "../../client.ts";
import { BulkDialog, type BulkDialogProps } from "./bulk-dialog.tsx";
import { tagsIn } from "./cell-fields.ts";

/** Tags to add and to remove. */
export function TagsDialog(props: BulkDialogProps) {
  const [add, setAdd] = useState("");
  const [remove, setRemove] = useState("");
  const change: BulkOrder["change"] | null =
    tagsIn(add + remove).length === 0 ? null : { kind: "tags", add: [...tagsIn(add)], remove: [...tagsIn(remove)] };
  return (
    <BulkDialog {...props} title="Change tags" yes="Change tags" change={change}>
      <label className="field">
        <span>Add</span>
        <input dir="auto" value={add} onChange={(event) => setAdd(event.target.value)} />
        <span className="hint">Several tags with commas between them.</span>
      </label>
      <label className="field">
        <span>Take away</span>
        <input dir="auto" value={remove} onChange={(event) => setRemove(event.target.value)} />
      </label>
    </BulkDialog>
  );
}
