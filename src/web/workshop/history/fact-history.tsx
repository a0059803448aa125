// What a fact was before each change, and a way back.
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { FactVersion } from "../../../app/views.ts";
import type { Fact } from "../../../core/facts/fact.ts";
import { TEXT_FIELDS } from "../../../core/facts/text-fields.ts";
import { api } from "../../client.ts";
import { KEYS } from "../../data/queries.ts";
import { Loaded } from "../../shell/states.tsx";
import { fieldText } from "../table/cell-fields.ts";

const times = new Intl.DateTimeFormat("en-GB", {
  day: "numeric",
  month: "short",
  year: "numeric",
  hour: "2-digit",
  minute: "2-digit",
});

interface HistoryProps {
  readonly fact: Fact;
  /** Lays an earlier wording into the editor; it counts once it is saved. */
  readonly use: (earlier: Fact) => void;
}

/** The history of a fact, fetched when it is opened. */
export function FactHistory({ fact, use }: HistoryProps) {
  const [open, setOpen] = useState(false);
  return (
    <details className="fact-history" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Earlier wordings</summary>
      {open ? <Versions fact={fact} use={use} /> : null}
    </details>
  );
}

function Versions({ fact, use }: HistoryProps) {
  const history = useQuery({ queryKey: [...KEYS.fact, fact.id, "history"], queryFn: () => api.factHistory(fact.id) });
  return (
    <Loaded query={history} what="the history">
      {({ versions }) => {
        const earlier = versions.filter((one) => one.before !== null);
        if (earlier.length === 0) return <p className="hint">This fact has not been changed.</p>;
        return (
          <ul>
            {earlier.map((version) => (
              <Version key={version.edit.id} version={version} use={use} />
            ))}
          </ul>
        );
      }}
    </Loaded>
  );
}

function Version({ version, use }: { readonly version: FactVersion; readonly use: HistoryProps["use"] }) {
  const before = version.before?.fact;
  if (!before) return null;
  const words = TEXT_FIELDS.map((field) => fieldText(before, field)).filter((text) => text !== "");
  return (
    <li>
      <p>
        Until <time dateTime={new Date(version.edit.at).toISOString()}>{times.format(version.edit.at)}</time>
      </p>
      <blockquote dir="auto">{words.join(" · ")}</blockquote>
      <button type="button" className="quiet" onClick={() => use(before)}>
        Go back to this wording
      </button>
    </li>
  );
}
