// Where the facts go, and the button that saves them.
import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import type { ImportPreview, SubjectView } from "../../app/views.ts";
import { type AcceptImport, api } from "../client.ts";
import { useSubjects } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Loaded, Trouble } from "../shell/states.tsx";
import { counted } from "../words.ts";
import { choicesOf } from "./column-names.ts";
import type { Home, useHome } from "./use-home.ts";

interface AcceptProps {
  readonly id: string;
  readonly preview: ImportPreview;
  readonly busy: boolean;
  readonly home: Home;
  readonly choose: ReturnType<typeof useHome>["choose"];
  readonly accepted: () => void;
}

/** The last step before anything is saved. */
export function AcceptPanel(props: AcceptProps) {
  const subjects = useSubjects();
  return (
    <Loaded query={subjects} what="the subjects">
      {(all) => <Accept {...props} subjects={all} />}
    </Loaded>
  );
}

const NEW = "";

function Accept(props: AcceptProps & { readonly subjects: readonly SubjectView[] }) {
  const { id, preview, busy, home, accepted } = props;
  const [oneWay, setOneWay] = useState(false);
  const accept = useMutation({
    mutationFn: () => {
      const subject = home.id === null ? { name: home.name.trim() } : { id: home.id };
      return api.acceptImport(id, { choices: choicesOf(preview), subject, oneWay } as AcceptImport);
    },
    onSuccess: accepted,
  });
  const nameless = home.id === null && home.name.trim() === "";
  const ready = preview.good > 0 && !busy && !accept.isPending && !nameless;
  return (
    <section className="sheet accept" aria-labelledby="accept">
      <h2 id="accept">Save them in</h2>
      <div className="field-row">
        <HomeFields {...props} />
        <label className="field">
          <span>Ask</span>
          <select value={oneWay ? "one" : "both"} onChange={(event) => setOneWay(event.target.value === "one")}>
            <option value="both">both ways</option>
            <option value="one">prompt to answer only</option>
          </select>
        </label>
        <BusyButton className="big primary" busy={!ready} onClick={() => accept.mutate()}>
          Save {counted(preview.good, "fact")}
        </BusyButton>
      </div>
      <p className="hint">{hintWords(preview, nameless)}</p>
      {accept.error ? <Trouble error={accept.error} /> : null}
    </section>
  );
}

function HomeFields({ home, choose, subjects }: AcceptProps & { readonly subjects: readonly SubjectView[] }) {
  const joined = home.chosen === null && home.id !== null;
  return (
    <>
      {subjects.length > 0 ? (
        <label className="field">
          <span>Subject</span>
          <select
            dir="auto"
            value={home.chosen ?? NEW}
            onChange={(event) => choose.subject(event.target.value || null)}
          >
            <option value={NEW}>A new subject</option>
            {subjects.map((subject) => (
              <option key={subject.id} value={subject.id}>
                {subject.name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {home.chosen === null ? (
        <div className="field">
          <label htmlFor="new-subject">Name of the new subject</label>
          <input
            id="new-subject"
            dir="auto"
            value={home.name}
            maxLength={120}
            aria-describedby="new-subject-hint"
            onChange={(event) => choose.name(event.target.value)}
          />
          <span id="new-subject-hint" className="hint" role="status">
            {joined ? "This subject exists already: the facts will be added to it." : ""}
          </span>
        </div>
      ) : null}
    </>
  );
}

function hintWords({ good, rows, duplicates }: ImportPreview, nameless: boolean): string {
  if (good === 0 && (rows === 0 || duplicates > 0)) return "There is nothing to save.";
  if (good === 0) return "No row can be saved yet. Say above what each column holds.";
  if (nameless) return "The new subject still needs a name.";
  return "Nothing has been saved so far; this button saves.";
}
