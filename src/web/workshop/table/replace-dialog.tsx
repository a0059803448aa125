// Replacing words in many facts.
import { useState } from "react";
import type { BulkOrder } from "../../client.ts";
import { BulkDialog, type BulkDialogProps } from "./bulk-dialog.tsx";

/** Find and replace, with what it would do below. */
export function ReplaceDialog(props: BulkDialogProps) {
  const [find, setFind] = useState("");
  const [by, setBy] = useState("");
  const [matchCase, setMatchCase] = useState(false);
  const [wholeWords, setWholeWords] = useState(true);
  const change: BulkOrder["change"] | null = find === "" ? null : { kind: "replace", find, by, matchCase, wholeWords };
  return (
    <BulkDialog {...props} title="Replace words" yes="Replace" change={change}>
      <label className="field">
        <span>Find</span>
        <input dir="auto" value={find} maxLength={500} onChange={(event) => setFind(event.target.value)} />
      </label>
      <label className="field">
        <span>Replace by</span>
        <input dir="auto" value={by} maxLength={500} onChange={(event) => setBy(event.target.value)} />
      </label>
      <label className="tick">
        <input type="checkbox" checked={wholeWords} onChange={(event) => setWholeWords(event.target.checked)} />
        Whole words only
      </label>
      <label className="tick">
        <input type="checkbox" checked={matchCase} onChange={(event) => setMatchCase(event.target.checked)} />
        Capitals must agree
      </label>
    </BulkDialog>
  );
}
