// Advice about the fact that is being written, below its cards. It never keeps anybody from saving.
import { type Note, RULE_TEXTS } from "../../../core/critique/note.ts";
import type { Fact } from "../../../core/facts/fact.ts";
import { angleName, counted } from "../../words.ts";
import { useNotes } from "./use-notes.ts";

interface NotesPanelProps {
  /** The fact as it stands in the editor; null while it is none. */
  readonly draft: Fact | null;
  readonly before: Fact | null;
  /** Lays the mended fact into the editor. */
  readonly mend: (fact: Fact) => void;
}

/** What could be better, note by note. */
export function NotesPanel({ draft, before, mend }: NotesPanelProps) {
  const { notes, hidden, waveOff, bringBack } = useNotes(draft, before);
  if (!draft || notes.length + hidden === 0) return null;
  const take = ({ fix }: Note): void => {
    if (fix) mend({ ...fix.content, id: draft.id, subject: draft.subject, angles: fix.angles ?? draft.angles } as Fact);
  };
  return (
    <section className="notes-panel" aria-label="What could be better">
      <h3>{notes.length === 0 ? "Nothing to better" : "What could be better"}</h3>
      <ul>
        {notes.map((note) => (
          <NoteSlip key={note.key} note={note} take={() => take(note)} waveOff={() => waveOff(note)} />
        ))}
      </ul>
      {hidden > 0 ? (
        <p className="hint">
          {counted(hidden, "note")} waved off.{" "}
          <button type="button" className="quiet" onClick={bringBack}>
            Show again
          </button>
        </p>
      ) : null}
    </section>
  );
}

interface SlipProps {
  readonly note: Note;
  readonly take: () => void;
  readonly waveOff: () => void;
}

function NoteSlip({ note, take, waveOff }: SlipProps) {
  const { title, reason, source } = RULE_TEXTS[note.rule];
  return (
    <li className="note-slip" data-severity={note.severity}>
      <h4>{title}</h4>
      <p dir="auto">
        {note.angle ? `${angleName(note.angle)}: ` : ""}
        {note.message}
      </p>
      <details>
        <summary>Why</summary>
        <p>{reason}</p>
        {source ? <p className="hint">{source}</p> : null}
      </details>
      <span className="row">
        {note.fix ? (
          <button type="button" onClick={take}>
            {note.fix.label}
          </button>
        ) : null}
        <button type="button" className="quiet" onClick={waveOff} aria-label={`Wave off: ${title}`}>
          Wave off
        </button>
      </span>
    </li>
  );
}
