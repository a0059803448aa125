// A fact's editor with its cards drawn beside it as it is written.
import { type RefCallback, useDeferredValue, useEffect, useLayoutEffect, useMemo, useRef } from "react";
import type { Fact } from "../../core/facts/fact.ts";
import { ApiError } from "../client.ts";
import { useDebounced } from "../data/use-debounced.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Trouble } from "../shell/states.tsx";
import { AngleChoice } from "./angle-choice.tsx";
import { DeletedFact, useDeleted } from "./deleted-fact.tsx";
import { draftAsking, draftCards, type FactDraft, previewFact, problemOf } from "./fact-draft.ts";
import { ExtraFields, KindChoice, KindFields } from "./fact-fields.tsx";
import { FactPaper } from "./fact-paper.tsx";
import { FactHistory } from "./history/fact-history.tsx";
import { LiveCards } from "./live-cards.tsx";
import { NotesPanel } from "./notes/notes-panel.tsx";
import { type EditorProps, useEditor } from "./use-editor.ts";

interface FactEditorProps extends EditorProps {
  /** Told of the title's element. */
  readonly title: RefCallback<HTMLHeadingElement>;
}

/** The editor of one fact; `before` is what is saved of it. */
export function FactEditor({ before, subject, title }: FactEditorProps) {
  const form = useRef<HTMLFormElement>(null);
  const editor = useEditor({ before, subject }, form);
  const { draft, change, dirty, problem, ready, submit, save, remove } = editor;
  const refused = save.error instanceof ApiError && save.error.kind === "conflict";
  const deleted = useDeleted(before) || (before !== null && refused);
  useSaveKey(submit);
  return (
    <section className="editor" aria-labelledby="editor-title">
      <form
        ref={form}
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <h2 ref={title} id="editor-title" tabIndex={-1}>
          {before ? "Fact" : subject ? "New fact" : "A first fact"}
        </h2>
        {before && deleted ? <DeletedFact id={before.id} restored={save.reset} /> : null}
        {before || subject ? null : <SubjectName name={editor.name} set={editor.setName} />}
        {before ? null : <KindChoice kind={draft.kind} change={change} />}
        <KindFields draft={draft} change={change} subject={subject} />
        <AngleChoice draft={draft} before={before} change={change} />
        <ExtraFields draft={draft} change={change} />
        <div className="editor-foot">
          <BusyButton type="submit" className="primary" busy={!ready}>
            Save
          </BusyButton>
          {before || !subject ? null : (
            <BusyButton busy={!ready} onClick={() => submit(true)}>
              Save and write another
            </BusyButton>
          )}
          {before && !deleted ? (
            <BusyButton className="quiet" busy={remove.isPending} onClick={() => remove.mutate(before.id)}>
              Delete
            </BusyButton>
          ) : null}
          <span className="hint" role="status">
            {dirty ? (problem ?? "Not saved yet.") : before && !deleted ? "Saved." : ""}
          </span>
        </div>
        {before && !deleted ? <FactPaper fact={before.id} /> : null}
        {before ? <FactHistory fact={before} use={(earlier) => change(draftAsking(earlier, before))} /> : null}
        {save.error && !deleted ? <Trouble error={save.error} /> : null}
        {remove.error ? <Trouble error={remove.error} /> : null}
      </form>
      <DraftCards draft={draft} before={before} mend={(fact) => change(draftAsking(fact, before))} />
    </section>
  );
}

function SubjectName({ name, set }: { readonly name: string; readonly set: (name: string) => void }) {
  return (
    <label className="field">
      <span>Subject</span>
      <input dir="auto" value={name} maxLength={120} onChange={(event) => set(event.target.value)} />
      <span className="hint">What the fact belongs to, such as "The night sky".</span>
    </label>
  );
}

const NOTES_MS = 600;

/** Draws the cards behind the typing where a slow machine cannot keep up. */
function DraftCards(props: {
  readonly draft: FactDraft;
  readonly before: Fact | null;
  readonly mend: (fact: Fact) => void;
}) {
  const { draft, before, mend } = props;
  const settled = useDeferredValue(draft);
  const cards = useMemo(() => draftCards(settled, before), [settled, before]);
  const fact = useMemo(() => (cards.length > 0 ? previewFact(settled, before) : null), [cards, settled, before]);
  // Advice that came and went with every letter would only disturb.
  const calm = useDebounced(fact, NOTES_MS);
  return (
    <div className="editor-beside">
      <NotesPanel draft={calm} before={before} mend={mend} />
      <LiveCards cards={cards} problem={problemOf(settled)} />
    </div>
  );
}

function useSaveKey(save: () => void): void {
  const latest = useRef(save);
  useLayoutEffect(() => {
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
