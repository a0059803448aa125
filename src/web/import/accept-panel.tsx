// Where the facts go, and the button that keeps them.
import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import type { ImportPreview, SubjectView } from "../../app/views.ts";
import { type AcceptImport, api } from "../client.ts";
import { useSubjects } from "../data/queries.ts";
import { Loaded, Trouble } from "../shell/states.tsx";
import { counted } from "../words.ts";
import { choicesOf } from "./column-names.ts";

interface AcceptProps {
  readonly id: string;
  readonly preview: ImportPreview;
  readonly busy: boolean;
  /** The subject that exists already, or undefined for a new one. */
  readonly home: string | undefined;
  readonly setHome: (subject: string | undefined) => void;
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

function Accept({
  id,
  preview,
  busy,
  home,
  setHome,
  accepted,
  subjects,
}: AcceptProps & { readonly subjects: readonly SubjectView[] }) {
  // Nothing has to be settled to begin; a second subject wants a name that tells it from the first.
  const [name, setName] = useState(subjects.length === 0 ? "My facts" : "");
  const accept = useMutation({
    mutationFn: () => {
      const subject = home === undefined ? { name: name.trim() } : { id: home };
      return api.acceptImport(id, { choices: choicesOf(preview), subject } as AcceptImport);
    },
    onSuccess: accepted,
  });
  const ready = preview.good > 0 && !busy && !accept.isPending && (home !== undefined || name.trim() !== "");
  return (
    <section className="sheet accept" aria-labelledby="accept">
      <h2 id="accept">Keep them in</h2>
      <div className="field-row">
        {subjects.length > 0 ? (
          <label className="field">
            <span>Subject</span>
            <select
              dir="auto"
              value={home ?? NEW}
              disabled={busy}
              onChange={(event) => setHome(event.target.value || undefined)}
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
        {home === undefined ? (
          <label className="field">
            <span>Name of the new subject</span>
            <input dir="auto" value={name} maxLength={120} onChange={(event) => setName(event.target.value)} />
          </label>
        ) : null}
        <button type="button" className="big primary" disabled={!ready} onClick={() => accept.mutate()}>
          Keep {counted(preview.good, "fact")}
        </button>
      </div>
      <p className="hint">
        {preview.good === 0
          ? "No row can be kept yet. Say above what each column holds."
          : "Nothing has been saved so far; this button saves."}
      </p>
      {accept.error ? <Trouble error={accept.error} /> : null}
    </section>
  );
}
