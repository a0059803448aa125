// The fields of a fact: those of its kind, and those that every fact may have.
import { useId, useRef } from "react";
import type { SubjectView } from "../../app/views.ts";
import type { FactContent } from "../../core/facts/fact.ts";
import { problemOf } from "./fact-draft.ts";
import type { FieldsProps } from "./fields-props.ts";
import { LabelsField } from "./labels-field.tsx";
import { PictureField } from "./picture-field.tsx";
import { SoundField } from "./sound-field.tsx";
import { SpellingFields } from "./spelling-fields.tsx";
import { TextField } from "./text-field.tsx";

const KINDS: readonly (readonly [FactContent["kind"], string, string])[] = [
  ["pair", "Pair", "two things that belong together"],
  ["statement", "Statement", "a sentence with gaps"],
  ["picture", "Picture", "a picture with a name"],
  ["list", "List in order", "asked from each item to the next"],
  ["labelled", "Labelled picture", "its parts covered one at a time"],
  ["formula", "Formula", "a formula in TeX notation and its name"],
  ["spelling", "Spelling", "a word to be written on a clue"],
  ["sound", "Sound", "a sound with a name"],
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
            onChange={() => props.change({ kind, on: [], off: [] })}
          />
          <span>
            <strong>{name}</strong> <span className="hint">{hint}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

/** The fields that make the fact; `subject` is the one to which it belongs, if there is one. */
export function KindFields({ draft, change, subject }: FieldsProps & { readonly subject: SubjectView | null }) {
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
          <PictureFacts draft={draft} change={change} />
        </>
      );
    case "list":
      return <ListFields draft={draft} change={change} />;
    case "formula":
      return (
        <>
          <TextField label="Name" value={draft.name} set={(name) => change({ name })} />
          <TextField
            label="Formula"
            value={draft.formula}
            set={(formula) => change({ formula })}
            hint="In TeX notation, such as T^2 = \frac{4\pi^2}{GM} a^3."
          />
        </>
      );
    case "spelling":
      return <SpellingFields draft={draft} change={change} subject={subject} />;
    case "sound":
      return (
        <>
          <SoundField label="Sound" sound={draft.sound} set={(sound) => change({ sound })} />
          <TextField label="Name" value={draft.name} set={(name) => change({ name })} />
        </>
      );
    case "labelled":
      return (
        <>
          <PictureField label="Picture" picture={draft.picture} set={(picture) => change({ picture })} />
          {draft.picture ? (
            <LabelsField
              key={draft.picture}
              picture={draft.picture}
              labels={draft.labels}
              set={(labels) => change({ labels })}
            />
          ) : null}
          <PictureFacts draft={draft} change={change} />
        </>
      );
  }
}

function ListFields({ draft, change }: FieldsProps) {
  return (
    <>
      <TextField label="Title" value={draft.title} set={(title) => change({ title })} />
      <TextField
        label="Items"
        value={draft.items}
        set={(items) => change({ items })}
        hint="One on each line, in their order."
        rows={5}
      />
    </>
  );
}

/** What the picture shows, for who cannot see it, and where it is from. */
function PictureFacts({ draft, change }: FieldsProps) {
  if (draft.picture === null) return null;
  return (
    <>
      <TextField
        label="Description of the picture"
        value={draft.pictureAlt}
        set={(pictureAlt) => change({ pictureAlt })}
        hint="What it shows, for who cannot see it."
      />
      <TextField
        label="Source of the picture"
        value={draft.pictureSource}
        set={(pictureSource) => change({ pictureSource })}
      />
      <TextField
        label="Licence of the picture"
        value={draft.pictureLicence}
        set={(pictureLicence) => change({ pictureLicence })}
      />
    </>
  );
}

/** Kinds of which the picture is part of the fact itself. */
const OWN_PICTURE: ReadonlySet<FactContent["kind"]> = new Set(["picture", "labelled"]);
/** Kinds of which the sound is. */
const OWN_SOUND: ReadonlySet<FactContent["kind"]> = new Set(["sound", "spelling"]);

/** Story, note, source, tags and, where they are not the fact itself, a picture and a sound. */
export function ExtraFields({ draft, change }: FieldsProps) {
  const { story, note, source, tags, why, language } = draft;
  const beside =
    (draft.picture !== null && !OWN_PICTURE.has(draft.kind)) || (draft.sound !== null && !OWN_SOUND.has(draft.kind));
  const used = [story, note, source, tags, why, language].some((text) => text !== "") || beside;
  return (
    <details className="extras" open={used || undefined}>
      <summary>Story, note, source, tags{OWN_PICTURE.has(draft.kind) ? "" : " and picture"}</summary>
      <TextField label="Story" value={story} set={(story) => change({ story })} hint="What helps you remember it." />
      <TextField
        label="Why"
        value={why}
        set={(why) => change({ why })}
        hint="A question to think about once the answer is known."
      />
      <TextField label="Note" value={note} set={(note) => change({ note })} />
      <TextField label="Source" value={source} set={(source) => change({ source })} />
      <TextField label="Tags" value={tags} set={(tags) => change({ tags })} hint="Separated by commas." />
      <TextField
        label="Language"
        value={language}
        set={(language) => change({ language: language.trim() })}
        hint="A tag such as en, la or pt-BR; found out if left empty."
      />
      {OWN_PICTURE.has(draft.kind) ? null : (
        <>
          <PictureField
            label="Picture on the answer side"
            picture={draft.picture}
            set={(picture) => change({ picture })}
          />
          <PictureFacts draft={draft} change={change} />
        </>
      )}
      {OWN_SOUND.has(draft.kind) ? null : (
        <SoundField label="Sound on the answer side" sound={draft.sound} set={(sound) => change({ sound })} />
      )}
    </details>
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
