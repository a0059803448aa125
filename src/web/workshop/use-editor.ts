// The editor's state: the draft, what keeps it from being saved, and what saving leads to.
import { type RefObject, useMemo, useRef } from "react";
import type { SubjectView } from "../../app/views.ts";
import type { Fact } from "../../core/facts/fact.ts";
import { useUnsaved } from "../shell/use-unsaved.ts";
import { draftOf, EMPTY_DRAFT, type FactDraft, saveProblem } from "./fact-draft.ts";
import { forgetDraft, useDraft } from "./use-draft.ts";
import { useWorkshopPlace } from "./use-place.ts";
import { useDelete, useSave } from "./use-save.ts";

/** What the first subject is called until it gets a name of its own; nothing has to be settled to begin. */
const FIRST_SUBJECT = "My facts";
const SUBJECT_DRAFT = "first-subject";

/** The fact that is edited, if it is saved already, and the subject it belongs to, if there is one. */
export interface EditorProps {
  readonly before: Fact | null;
  readonly subject: SubjectView | null;
}

/** Everything the editor's form needs; `form` is where the first field is looked for. */
export function useEditor({ before, subject }: EditorProps, form: RefObject<HTMLFormElement | null>) {
  const key = before?.id ?? `new.${subject?.id ?? ""}`;
  const rule = subject?.spelling;
  const blank = useMemo(() => ({ ...EMPTY_DRAFT, ...rule }), [rule]);
  const initial = useMemo(() => (before ? draftOf(before) : blank), [before, blank]);
  const { draft, setDraft, dirty } = useDraft(key, initial);
  const name = useDraft(SUBJECT_DRAFT, FIRST_SUBJECT);
  const { open } = useWorkshopPlace();
  const another = useRef(false);
  const forget = (): void => {
    forgetDraft(key);
    if (!subject) forgetDraft(SUBJECT_DRAFT);
  };
  const leaving = useUnsaved(dirty, forget);
  const save = useSave((fact) => {
    forget();
    if (another.current && subject) {
      setDraft({ ...blank, kind: draft.kind, source: draft.source, tags: draft.tags });
      form.current?.querySelector<HTMLElement>(".field textarea, .picture-field input")?.focus();
      return;
    }
    leaving.release();
    if (!before) open({ subject: fact.subject, fact: fact.id });
  });
  const remove = useDelete(() => {
    forget();
    leaving.release();
    open({ subject: subject?.id ?? null, fact: null });
  });
  const nameless = !subject && !before && name.draft.trim() === "";
  const problem = saveProblem(draft, before) ?? (nameless ? "The subject still needs a name." : null);
  const ready = problem === null && !save.isPending && (dirty || before === null);
  const submit = (more = false): void => {
    if (!ready) return;
    another.current = more;
    save.mutate({ draft, before, subject, subjectName: name.draft });
  };
  const change = (part: Partial<FactDraft>): void => setDraft((all) => ({ ...all, ...part }));
  return { draft, change, dirty, problem, ready, submit, save, remove, name: name.draft, setName: name.setDraft };
}
