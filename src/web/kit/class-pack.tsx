// A box for each name of a list: for a class, or for friends who learn the same.
import { useId, useState } from "react";
import { parseNames } from "../../core/kit/class-names.ts";
import { counted } from "../words.ts";
import type { ChoiceProps } from "./card-choice.tsx";

interface ClassPackProps extends ChoiceProps {
  readonly names: string;
  readonly setNames: (names: string) => void;
  readonly problem: string | undefined;
}

/** Names, and how their boxes are printed. */
export function ClassPack({ draft, change, names, setNames, problem }: ClassPackProps) {
  const id = useId();
  // Open at first where there are names; from then on as the reader likes it.
  const [open] = useState(names.trim() !== "");
  const parsed = parseNames(names);
  const count = parsed.ok ? parsed.value.length : 0;
  return (
    <details className="opened" open={open}>
      <summary>A box for each of several people</summary>
      <div className="class-pack">
        <div className="field">
          <label htmlFor={id}>Names, one a line</label>
          <textarea
            id={id}
            dir="auto"
            rows={4}
            value={names}
            placeholder={"Ines Duarte\nTomás Prado"}
            aria-invalid={problem !== undefined}
            aria-describedby={`${id}-help`}
            onChange={({ target }) => setNames(target.value)}
          />
          {problem ? (
            <span className="field-problem" role="alert">
              {problem}
            </span>
          ) : null}
          <span id={`${id}-help`} className="hint" role="status">
            {count === 0
              ? "Everybody gets all parts ticked above, with their name on dividers, calendar and instructions."
              : `${counted(count, "box", "boxes")}, each with a name on its dividers. The names are forgotten when this window is closed.`}
          </span>
        </div>
        {count > 0 ? (
          <>
            <label className="choice">
              <input
                type="checkbox"
                checked={draft.nameOnCards}
                onChange={({ target }) => change({ nameOnCards: target.checked })}
              />
              <span>The name on every card too</span>
            </label>
            <label className="field">
              <span>First day of their boxes</span>
              <input type="date" value={draft.start} onChange={({ target }) => change({ start: target.value })} />
              <span className="hint">Today, if no day is chosen.</span>
            </label>
            <fieldset>
              <legend>Files</legend>
              <label className="choice">
                <input type="radio" name="zip" checked={!draft.zip} onChange={() => change({ zip: false })} />
                <span>One PDF with all boxes, one after another</span>
              </label>
              <label className="choice">
                <input type="radio" name="zip" checked={draft.zip} onChange={() => change({ zip: true })} />
                <span>A zip file with a PDF for each name</span>
              </label>
            </fieldset>
          </>
        ) : null}
      </div>
    </details>
  );
}
