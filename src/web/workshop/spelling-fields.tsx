// The fields of a word to be spelt, and what counts when it is written: for this fact, or for all of its subject.
import { useMutation } from "@tanstack/react-query";
import type { SubjectView } from "../../app/views.ts";
import type { SpellingRule } from "../../core/facts/fact.ts";
import { api } from "../client.ts";
import { errorWords, useRefresh } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { counted } from "../words.ts";
import type { FieldsProps } from "./fields-props.ts";
import { SoundField } from "./sound-field.tsx";
import { TextField } from "./text-field.tsx";

/** Clue, word, sound, and what counts. */
export function SpellingFields({ draft, change, subject }: FieldsProps & { readonly subject: SubjectView | null }) {
  const { accents, letterCase } = draft;
  return (
    <>
      <TextField
        label="Clue"
        value={draft.clue}
        set={(clue) => change({ clue })}
        hint="What is read or heard before the word is written."
      />
      <TextField label="Word" value={draft.word} set={(word) => change({ word })} />
      <SoundField label="Sound beside the clue" sound={draft.sound} set={(sound) => change({ sound })} />
      <fieldset>
        <legend>What counts</legend>
        <Tick label="Accents" rule={accents} set={(next) => change({ accents: next })} />
        <Tick label="Capital letters" rule={letterCase} set={(next) => change({ letterCase: next })} />
        {subject ? <ForSubject subject={subject} rule={{ accents, letterCase }} /> : null}
      </fieldset>
    </>
  );
}

type Counts = SpellingRule["accents"];

const Tick = (props: { readonly label: string; readonly rule: Counts; readonly set: (rule: Counts) => void }) => (
  <label className="tick">
    <input
      type="checkbox"
      checked={props.rule === "count"}
      onChange={(event) => props.set(event.target.checked ? "count" : "ignore")}
    />
    {props.label}
  </label>
);

/** Makes what counts here count in the whole subject; nothing where it does already. */
function ForSubject({ subject, rule }: { readonly subject: SubjectView; readonly rule: SpellingRule }) {
  const refresh = useRefresh();
  const notify = useNotify();
  const undo = async (before: SpellingRule, edit: string | null): Promise<void> => {
    try {
      if (edit !== null) await api.undoEdit(edit);
      await api.spellSubject(subject.id, { ...before, following: false });
      notify("The subject’s spellings count as before.");
    } catch (error) {
      notify(errorWords(error));
    }
    await refresh();
  };
  const save = useMutation({
    mutationFn: () => api.spellSubject(subject.id, { ...rule, following: true }),
    onSuccess: async ({ changed, edit }) => {
      await refresh();
      notify(
        `So it is in this subject now: ${counted(changed, "fact")} changed.`,
        () => void undo(subject.spelling, edit),
      );
    },
    onError: (error) => notify(errorWords(error)),
  });
  const { accents, letterCase } = subject.spelling;
  if (accents === rule.accents && letterCase === rule.letterCase)
    return <p className="hint">So it is in the whole subject.</p>;
  return (
    <p className="row">
      <BusyButton className="quiet" busy={save.isPending} onClick={() => save.mutate()}>
        Do so in the whole subject
      </BusyButton>
    </p>
  );
}
