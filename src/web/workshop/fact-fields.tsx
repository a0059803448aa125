// The fields of a fact: those of its kind, and those that every fact may have.
import { useId, useRef } from "react";
import type { FactContent } from "../../core/facts/fact.ts";
import { type FactDraft, problemOf } from "./fact-draft.ts";
import { PictureField } from "./picture-field.tsx";

/** What every part of the editor gets. */
export interface FieldsProps {
  readonly draft: FactDraft;
  readonly change: (part: Partial<FactDraft>) => void;
}

const KINDS: readonly (readonly [FactContent["kind"], string, string])[] = [
  ["pair", "Pair", "two things that belong together"],
  ["statement", "Statement", "a sentence with gaps"],
  ["picture", "Picture", "a picture with a name"],
];

/** What kind of fact is written. */
export function KindChoice(props: { readonly kind: FactContent["kind"]; readonly change: FieldsProps["change"] }) {
  return (
    <fieldset className="kinds">
      <legend>Kind of fact</legend>
      {KINDS.map(([kind, name, hint]) => (
        <label key={kind} className="kind">
          <input
            type="radio"
            name="kind"
            checked={props.kind === kind}
            onChange={() => props.change({ kind, off: [] })}
          />
          <span>
            <strong>{name}</strong> <span className="hint">{hint}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

/** The fields that make the fact. */
export function KindFields({ draft, change }: FieldsProps) {
  switch (draft.kind) {
    case "pair":
      return (
        <>
          <TextField label="Prompt" value={draft.prompt} set={(prompt) => change({ prompt })} />
          <TextField label="Answer" value={draft.answer} set={(answer) => change({ answer })} />
        </>
      );
    case "statement":
      return <StatementField draft={draft} change={change} />;
    case "picture":
      return (
        <>
          <PictureField label="Picture" picture={draft.picture} set={(picture) => change({ picture })} />
          <TextField label="Name" value={draft.name} set={(name) => change({ name })} />
        </>
      );
  }
}

/** Story, note, source, tags and, where it is not the fact itself, a picture. */
export function ExtraFields({ draft, change }: FieldsProps) {
  const used =
    [draft.story, draft.note, draft.source, draft.tags].some((text) => text !== "") || draft.picture !== null;
  return (
    <details className="extras" open={used || undefined}>
      <summary>Story, note, source, tags{draft.kind === "picture" ? "" : " and picture"}</summary>
      <TextField
        label="Story"
        value={draft.story}
        set={(story) => change({ story })}
        hint="What helps you remember it."
      />
      <TextField label="Note" value={draft.note} set={(note) => change({ note })} />
      <TextField label="Source" value={draft.source} set={(source) => change({ source })} />
      <TextField label="Tags" value={draft.tags} set={(tags) => change({ tags })} hint="Separated by commas." />
      {draft.kind === "picture" ? null : (
        <PictureField
          label="Picture on the answer side"
          picture={draft.picture}
          set={(picture) => change({ picture })}
        />
      )}
    </details>
  );
}

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly hint?: string;
}

function TextField({ label, value, set, hint }: TextFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <textarea
        id={id}
        dir="auto"
        rows={1}
        value={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => set(event.target.value)}
      />
      {hint ? (
        <span id={`${id}-hint`} className="hint">
          {hint}
        </span>
      ) : null}
    </div>
  );
}

function StatementField({ draft, change }: FieldsProps) {
  const id = useId();
  const area = useRef<HTMLTextAreaElement>(null);
  const problem = draft.statement.trim() === "" ? null : problemOf(draft);
  const bracket = (): void => {
    const field = area.current;
    if (!field || field.selectionStart === field.selectionEnd) {
      field?.focus();
      return;
    }
    const { selectionStart: from, selectionEnd: to } = field;
    const text = draft.statement;
    change({ statement: `${text.slice(0, from)}[${text.slice(from, to)}]${text.slice(to)}` });
    requestAnimationFrame(() => {
      field.focus();
      field.setSelectionRange(to + 2, to + 2);
    });
  };
  return (
    <div className="field">
      <label htmlFor={id}>Statement</label>
      <textarea
        ref={area}
        id={id}
        dir="auto"
        rows={3}
        value={draft.statement}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-help`}
        onChange={(event) => change({ statement: event.target.value })}
      />
      <span id={`${id}-help`} className={problem ? "field-problem" : "hint"} role="status">
        {problem ?? "Put [square brackets] round what is to be asked; each pair makes a card."}
      </span>
      <div>
        <button type="button" onClick={bracket}>
          Put brackets round the selection
        </button>
      </div>
    </div>
  );
}
