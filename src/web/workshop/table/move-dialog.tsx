// Moving facts to another subject; their cards stay where they lie.
import { useState } from "react";
import type { SubjectView } from "../../../app/views.ts";
import { BulkDialog, type BulkDialogProps } from "./bulk-dialog.tsx";

/** The subject to which the facts go. */
export function MoveDialog({ subjects, ...props }: BulkDialogProps & { readonly subjects: readonly SubjectView[] }) {
  const [subject, setSubject] = useState(subjects[0]?.id ?? "");
  return (
    <BulkDialog {...props} title="Move to another subject" yes="Move" change={{ kind: "move", subject }}>
      <label className="field">
        <span>Subject</span>
        <select dir="auto" value={subject} onChange={(event) => setSubject(event.target.value)}>
          {subjects.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
        <span className="hint">Their cards stay where they lie in the box.</span>
      </label>
    </BulkDialog>
  );
}
