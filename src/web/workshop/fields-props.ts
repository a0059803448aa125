// What every part of the editor gets.
import type { FactDraft } from "./fact-draft.ts";

/** The draft, and how to change parts of it. */
export interface FieldsProps {
  readonly draft: FactDraft;
  readonly change: (part: Partial<FactDraft>) => void;
}
