// Mending many facts by one rule of the critique.
import { RULE_TEXTS, type Rule } from "../../../core/critique/note.ts";
import { BulkDialog, type BulkDialogProps } from "./bulk-dialog.tsx";

/** What the rule would make of the facts. */
export function FixDialog({ rule, ...props }: BulkDialogProps & { readonly rule: string }) {
  const known = rule as Rule;
  return (
    <BulkDialog {...props} title={RULE_TEXTS[known].title} yes="Mend them" change={{ kind: "fix", rule: known }}>
      <p className="hint">Only facts that can be mended by rule are changed. The others are left for you.</p>
    </BulkDialog>
  );
}
