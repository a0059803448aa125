// A text that was pasted, and the cards that could be made of it. The reader ticks what to keep.
import { useMutation } from "@tanstack/react-query";
import { useDeferredValue, useMemo, useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { SubjectView } from "../../../app/views.ts";
import { defaultAngles } from "../../../core/cards/default-angles.ts";
import { LONGEST_TEXT, splitText } from "../../../core/splitting/split-text.ts";
import { api, type NewFacts } from "../../client.ts";
import { newId } from "../../data/new-id.ts";
import { useRefresh, useSubjects } from "../../data/queries.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useNotify } from "../../shell/notices.tsx";
import { PageHeading } from "../../shell/page-heading.tsx";
import { Loaded, Trouble } from "../../shell/states.tsx";
import { useUnsaved } from "../../shell/use-unsaved.ts";
import { counted } from "../../words.ts";
import { useUndo } from "../history/use-undo.ts";
import { forgetDraft, useDraft } from "../use-draft.ts";
import { workshopAddress } from "../use-place.ts";
import { ProposalList } from "./proposal-list.tsx";
import { NOTHING_TICKED, tickedFacts } from "./ticked.ts";
import "../../styles/split.css";

const DRAFT = "split";
const EXAMPLE = "The Orion Nebula is about 1,350 light years away. It was drawn by Huygens in 1656.";

/** Splitting a text. */
export function SplitPage() {
  const subjects = useSubjects();
  return (
    <>
      <PageHeading title="Split a text">Split a text</PageHeading>
      <Loaded query={subjects} what="the subjects">
        {(all) =>
          all.length === 0 ? (
            <p className="lead">
              Cards need a subject to lie in. <Link href="/workshop">Write a first fact</Link>, then come back.
            </p>
          ) : (
            <Splitting subjects={all} />
          )
        }
      </Loaded>
    </>
  );
}

function Splitting({ subjects }: { readonly subjects: readonly SubjectView[] }) {
  const [params] = useSearchParams();
  const asked = subjects.find((one) => one.id === params.get("subject")) ?? subjects[0];
  const [subject, setSubject] = useState(asked?.id ?? "");
  const { draft: text, setDraft: setText, dirty } = useDraft(DRAFT, "");
  const [ticked, setTicked] = useState(NOTHING_TICKED);
  const settled = useDeferredValue(text);
  const proposals = useMemo(() => (settled.length > LONGEST_TEXT ? [] : splitText(settled)), [settled]);
  const facts = useMemo(() => tickedFacts(proposals, ticked, ""), [proposals, ticked]);
  const cards = facts.reduce((sum, fact) => sum + defaultAngles(fact).length, 0);
  useUnsaved(dirty, () => forgetDraft(DRAFT));
  const save = useSaveSplit(() => {
    setText("");
    setTicked(NOTHING_TICKED);
  });
  return (
    <div className="splitting">
      <p className="lead">
        Paste a paragraph or a list. Numbers, dates, names and key words are proposed as blanks; press those that are
        worth asking. Nothing is added to your words.
      </p>
      <label className="field">
        <span>The text</span>
        <textarea
          dir="auto"
          rows={7}
          value={text}
          placeholder={EXAMPLE}
          onChange={(event) => {
            setText(event.target.value);
            // What was ticked belongs to places in the text.
            setTicked(NOTHING_TICKED);
          }}
        />
      </label>
      {text.length > LONGEST_TEXT ? (
        <p role="alert">
          This is very long. Split a part of at most {LONGEST_TEXT.toLocaleString("en-GB")} characters at a time.
        </p>
      ) : null}
      {text.trim() === "" ? null : (
        <ProposalList text={settled} proposals={proposals} ticked={ticked} change={setTicked} />
      )}
      <div className="split-foot">
        <label className="field inline">
          <span>Save them in</span>
          <select dir="auto" value={subject} onChange={(event) => setSubject(event.target.value)}>
            {subjects.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <BusyButton
          className="big primary"
          busy={facts.length === 0 || save.isPending}
          onClick={() =>
            save.mutate({ subject, facts: facts.map((content) => ({ id: newId(), content })) as NewFacts["facts"] })
          }
        >
          {facts.length === 0 ? "Save" : `Save ${counted(cards, "card")}`}
        </BusyButton>
        <span className="hint" role="status">
          {facts.length === 0
            ? "Nothing is ticked yet."
            : `${counted(facts.length, "fact")}, ${counted(cards, "card")}`}
        </span>
      </div>
      {save.error ? <Trouble error={save.error} /> : null}
      <p>
        <Link href={workshopAddress({ subject, fact: null })}>Back to the facts</Link>
      </p>
    </div>
  );
}

function useSaveSplit(saved: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  const { offer } = useUndo();
  return useMutation({
    mutationFn: api.createFacts,
    onSuccess: async ({ facts }) => {
      saved();
      const [first] = facts;
      const text = `Saved: ${counted(facts.length, "fact")}.`;
      if (first) await offer(text, first.id);
      else notify(text);
      await refresh();
    },
  });
}
