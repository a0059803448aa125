// A fact's editor with its cards drawn beside it as it is written.
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import type { SubjectView } from "../../app/views.ts";
import type { Fact } from "../../core/facts/fact.ts";
import { useConfirm } from "../shell/confirm.tsx";
import { useLeaveGuard } from "../shell/guarded-location.ts";
import { Trouble } from "../shell/states.tsx";
import { AngleChoice } from "./angle-choice.tsx";
import { draftCards, draftOf, EMPTY_DRAFT, type FactDraft, problemOf } from "./fact-draft.ts";
import { ExtraFields, KindChoice, KindFields } from "./fact-fields.tsx";
import { LiveCards } from "./live-cards.tsx";
import { forgetDraft, useDraft } from "./use-draft.ts";
import { useWorkshopPlace } from "./use-place.ts";
import { useDelete, useSave } from "./use-save.ts";

interface EditorProps {
  readonly before: Fact | null;
  readonly subject: SubjectView | null;
}

/** What the first subject is called until it gets a name of its own; nothing has to be settled to begin. */
const FIRST_SUBJECT = "My facts";

/** The editor of one fact; `before` is what is saved of it. */
export function FactEditor({ before, subject }: EditorProps) {
  const key = before?.id ?? `new.${subject?.id ?? ""}`;
  const initial = useMemo(() => (before ? draftOf(before) : EMPTY_DRAFT), [before]);
  const { draft, setDraft, dirty } = useDraft(key, initial);
  const [subjectName, setSubjectName] = useState(FIRST_SUBJECT);
  const { open } = useWorkshopPlace();
  const another = useRef(false);
  const leaving = useGuard(dirty, key);
  const save = useSave((fact) => {
    forgetDraft(key);
    leaving.release();
    if (before) return;
    if (another.current && subject)
      setDraft({ ...EMPTY_DRAFT, kind: draft.kind, source: draft.source, tags: draft.tags });
    else open({ subject: fact.subject, fact: fact.id });
  });
  const remove = useDelete(() => {
    forgetDraft(key);
    leaving.release();
    open({ subject: subject?.id ?? null, fact: null });
  });
  const problem =
    problemOf(draft) ?? (subject || before || subjectName.trim() ? null : "The subject still needs a name.");
  const ready = problem === null && !save.isPending && (dirty || before === null);
  const submit = (more = false): void => {
    if (!ready) return;
    another.current = more;
    save.mutate({ draft, before, subject, subjectName });
  };
  useSaveKey(submit);
  const change = (part: Partial<FactDraft>): void => setDraft((all) => ({ ...all, ...part }));
  return (
    <section className="editor" aria-labelledby="editor-title">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <EditorTitle text={before ? "Fact" : subject ? "New fact" : "A first fact"} />
        {before || subject ? null : (
          <label className="field">
            <span>Subject</span>
            <input
              dir="auto"
              value={subjectName}
              maxLength={120}
              onChange={(event) => setSubjectName(event.target.value)}
            />
            <span className="hint">What the fact belongs to, such as "The night sky".</span>
          </label>
        )}
        {before ? null : <KindChoice kind={draft.kind} change={change} />}
        <KindFields draft={draft} change={change} />
        <AngleChoice draft={draft} before={before} change={change} />
        <ExtraFields draft={draft} change={change} />
        <div className="editor-foot">
          <button type="submit" className="primary" disabled={!ready}>
            Save
          </button>
          {before || !subject ? null : (
            <button type="button" disabled={!ready} onClick={() => submit(true)}>
              Save and write another
            </button>
          )}
          {before ? (
            <button
              type="button"
              className="quiet"
              disabled={remove.isPending}
              onClick={() => remove.mutate(before.id)}
            >
              Delete
            </button>
          ) : null}
          <span className="hint" role="status">
            {dirty ? (problem ?? "Not saved yet.") : before ? "Saved." : ""}
          </span>
        </div>
        {save.error ? <Trouble error={save.error} /> : null}
        {remove.error ? <Trouble error={remove.error} /> : null}
      </form>
      <DraftCards draft={draft} before={before} />
    </section>
  );
}

/** Draws the cards behind the typing where a slow machine cannot keep up. */
function DraftCards({ draft, before }: { readonly draft: FactDraft; readonly before: Fact | null }) {
  const settled = useDeferredValue(draft);
  const cards = useMemo(() => draftCards(settled, before), [settled, before]);
  return <LiveCards cards={cards} problem={problemOf(settled)} />;
}

function EditorTitle({ text }: { readonly text: string }) {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // Opening another fact leads to it, also where it lies below the list.
    if (document.activeElement?.tagName !== "H1") title.current?.focus();
  }, []);
  return (
    <h2 ref={title} id="editor-title" tabIndex={-1}>
      {text}
    </h2>
  );
}

/** Asks before unsaved changes are left; `release` lets the next step pass unasked. */
function useGuard(dirty: boolean, key: string): { readonly release: () => void } {
  const confirm = useConfirm();
  const released = useRef(false);
  useEffect(() => {
    released.current = false;
  }, [dirty]);
  const ask = useCallback(async () => {
    if (released.current) return true;
    const leave = await confirm({
      title: "Leave without saving?",
      body: "What you wrote here is not saved yet.",
      yes: "Leave without saving",
      no: "Stay",
      careful: true,
    });
    if (leave) forgetDraft(key);
    return leave;
  }, [confirm, key]);
  useLeaveGuard(dirty, ask);
  return {
    release: () => {
      released.current = true;
    },
  };
}

function useSaveKey(save: () => void): void {
  const latest = useRef(save);
  useEffect(() => {
    latest.current = save;
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "s") return;
      event.preventDefault();
      latest.current();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, []);
}
