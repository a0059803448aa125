// The latest steps of editing, each of which can be undone.
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { api } from "../../client.ts";
import { KEYS } from "../../data/queries.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Loaded } from "../../shell/states.tsx";
import { useUndo } from "../history/use-undo.ts";

const times = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });

/** What was done, newest first; fetched when it is opened. */
export function EditsPanel() {
  const [open, setOpen] = useState(false);
  return (
    <details className="edits" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Earlier edits</summary>
      {open ? <Steps /> : null}
    </details>
  );
}

function Steps() {
  const edits = useQuery({ queryKey: KEYS.edits, queryFn: api.edits });
  const { undo, busy } = useUndo();
  return (
    <Loaded query={edits} what="the edits">
      {({ edits: all }) =>
        all.length === 0 ? (
          <p className="hint">Nothing has been edited yet.</p>
        ) : (
          <ul>
            {all.map((edit) => (
              <li key={edit.id}>
                <time dateTime={new Date(edit.at).toISOString()}>{times.format(edit.at)}</time>
                <span dir="auto">{edit.title}</span>
                {edit.undone ? (
                  <span className="hint">Undone</span>
                ) : (
                  <BusyButton
                    className="quiet"
                    busy={busy}
                    aria-label={`Undo: ${edit.title}`}
                    onClick={() => undo(edit.id)}
                  >
                    Undo
                  </BusyButton>
                )}
              </li>
            ))}
          </ul>
        )
      }
    </Loaded>
  );
}
