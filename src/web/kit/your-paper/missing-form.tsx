// Paper cards that are lost or damaged, by their numbers.
import { useMutation } from "@tanstack/react-query";
import { useId, useState } from "react";
import { printedNumber } from "../../../core/cards/card-number.ts";
import { parseNumbers } from "../../../core/paper/missed-numbers.ts";
import { api, type MissingCards } from "../../client.ts";
import { useRefresh } from "../../data/queries.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useNotify } from "../../shell/notices.tsx";
import { Trouble } from "../../shell/states.tsx";
import { capital, counted } from "../../words.ts";
import { useUndoPrintStep } from "./use-undo-print-step.ts";

type Kind = MissingCards["kind"];

/** Each number is checked by its last digit while it is typed. */
export function MissingForm() {
  const id = useId();
  const [kind, setKind] = useState<Kind>("lost");
  const [text, setText] = useState("");
  const { numbers, problems } = parseNumbers(text);
  const record = useRecordMissing(() => setText(""));
  const ready = numbers.length > 0 && problems.length === 0 && !record.isPending;
  return (
    <details className="opened">
      <summary>Lost or damaged cards</summary>
      <form
        className="missing-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (ready) record.mutate({ kind, numbers: [...numbers] });
        }}
      >
        <fieldset>
          <legend>What happened to them</legend>
          {(["lost", "damaged"] as const).map((one) => (
            <label key={one} className="tick">
              <input type="radio" name="kind" checked={kind === one} onChange={() => setKind(one)} />
              {one === "lost" ? "Lost, or taken by somebody" : "Damaged: torn, wet, unreadable"}
            </label>
          ))}
        </fieldset>
        <div className="field">
          <label htmlFor={id}>Their numbers</label>
          <input
            id={id}
            className="typed-numbers"
            value={text}
            aria-invalid={problems.length > 0}
            aria-describedby={`${id}-help`}
            onChange={({ target }) => {
              setText(target.value);
              record.reset();
            }}
          />
          <span id={`${id}-help`} className="hint">
            Such as {printedNumber(1042)}, with anything between them. The number of a lost card stands on its page in
            the box, where it can be recorded as lost too.
          </span>
          {problems.length > 0 ? (
            <ul className="field-problem" role="alert">
              {problems.map(({ typed, reason }) => (
                <li key={typed}>{capital(reason)}</li>
              ))}
            </ul>
          ) : null}
        </div>
        {record.error ? <Trouble error={record.error} /> : null}
        <p>
          <BusyButton type="submit" busy={!ready}>
            {numbers.length === 0 ? "Record them" : `Record ${counted(numbers.length, "card")} as ${kind}`}
          </BusyButton>
        </p>
      </form>
    </details>
  );
}

function useRecordMissing(recorded: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  const undo = useUndoPrintStep();
  return useMutation({
    mutationFn: (missing: MissingCards) => api.cardsMissing(missing),
    onSuccess: async (step, { kind, numbers }) => {
      recorded();
      await refresh();
      notify(`${counted(numbers.length, "card")} recorded as ${kind}: printed again with the next kit.`, () =>
        undo.mutate(step.id),
      );
    },
  });
}
