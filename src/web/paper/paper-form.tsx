// The results of one day, checked as they are typed, seen before they are recorded.
import { keepPreviousData, useMutation, useQuery } from "@tanstack/react-query";
import { useId, useMemo, useState } from "react";
import type { BoxView, PaperDayView, PaperOutcome } from "../../app/views.ts";
import { printedNumber } from "../../core/cards/card-number.ts";
import { type MissedNumbers, parseMissed } from "../../core/paper/missed-numbers.ts";
import type { SheetReading } from "../../core/paper/sheet-reading.ts";
import { api } from "../client.ts";
import { KEYS, useRefresh } from "../data/queries.ts";
import { useDebounced } from "../data/use-debounced.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { Trouble } from "../shell/states.tsx";
import { capital, counted, longDate, pileName } from "../words.ts";
import { useTakeBackPaper } from "./undo-panel.tsx";

interface FormProps {
  readonly view: PaperDayView;
  readonly box: BoxView;
  /** What a photo of this day's sheet says, to begin with. */
  readonly reading: SheetReading | null;
}

const TYPING_MS = 350;

/** Piles, missed cards, new cards, and what they come to. */
export function PaperForm({ view, box, reading }: FormProps) {
  const due = useMemo(() => new Set(view.piles.flatMap((pile) => pile.numbers)), [view]);
  const [left, setLeft] = useState(
    () => new Set(reading ? [...due].filter((one) => !reading.asked.includes(one)) : []),
  );
  const [text, setText] = useState(() => (reading?.missed ?? []).map(printedNumber).join(", "));
  const [introduced, setIntroduced] = useState(
    () => new Set(view.newCards.filter((one) => reading?.asked.includes(one))),
  );
  const fit = useMemo(() => new Set([...due, ...introduced]), [due, introduced]);
  const missed = useMemo(() => parseMissed(text, fit), [text, fit]);
  const asked = [...due].filter((one) => !left.has(one) || missed.numbers.includes(one));
  const order = { date: view.date, asked, missed: [...missed.numbers], introduced: [...introduced] };
  const nothing = asked.length + introduced.size === 0;
  const { record, preview } = useRecord(order, missed.problems.length === 0 && !nothing);
  const flip = (numbers: readonly number[], on: boolean): void => {
    const next = new Set(left);
    for (const one of numbers) on ? next.delete(one) : next.add(one);
    setLeft(next);
  };
  return (
    <form
      className="paper-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (preview.ready && !record.isPending) record.mutate();
      }}
    >
      {view.piles.length === 0 ? (
        <p>Nothing was due on {longDate(view.date)}.</p>
      ) : (
        <>
          <fieldset>
            <legend>Piles that were asked</legend>
            {view.piles.map(({ compartment, bundle, numbers }) => (
              <label key={`${compartment} ${bundle}`} className="tick">
                <input
                  type="checkbox"
                  checked={!numbers.every((one) => left.has(one))}
                  onChange={(event) => flip(numbers, event.target.checked)}
                />
                {capital(pileName(compartment, bundle, box.chart.compartments[compartment - 1]?.bundles ?? 1))},{" "}
                {counted(numbers.length, "card")}
              </label>
            ))}
          </fieldset>
          <MissedField text={text} set={setText} missed={missed} />
        </>
      )}
      {view.newCards.length > 0 ? (
        <fieldset>
          <legend>New cards that came into the box</legend>
          <div className="chips">
            {view.newCards.map((one) => (
              <label key={one} className="chip">
                <input
                  type="checkbox"
                  checked={introduced.has(one)}
                  onChange={() => {
                    const next = new Set(introduced);
                    if (!next.delete(one)) next.add(one);
                    setIntroduced(next);
                  }}
                />
                <span>{printedNumber(one)}</span>
              </label>
            ))}
          </div>
          <button type="button" className="quiet" onClick={() => setIntroduced(new Set(view.newCards))}>
            All of them
          </button>
        </fieldset>
      ) : null}
      <p role="status" className="paper-outcome">
        {nothing
          ? "Nothing is ticked yet."
          : preview.data && missed.problems.length === 0
            ? outcomeWords(preview.data)
            : ""}
      </p>
      {preview.error ? <Trouble error={preview.error} /> : null}
      {record.error ? <Trouble error={record.error} /> : null}
      <BusyButton type="submit" className="big primary" busy={!preview.ready || record.isPending}>
        Record these results
      </BusyButton>
    </form>
  );
}

function MissedField(props: {
  readonly text: string;
  readonly set: (text: string) => void;
  readonly missed: MissedNumbers;
}) {
  const { text, set, missed } = props;
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>All recalled except</label>
      <textarea
        id={id}
        rows={2}
        inputMode="text"
        className="missed-numbers"
        value={text}
        aria-invalid={missed.problems.length > 0}
        aria-describedby={`${id}-help`}
        onChange={(event) => set(event.target.value)}
      />
      <span id={`${id}-help`} className="hint" role="status">
        {missed.numbers.length === 0
          ? "The numbers of the missed cards, with anything between them. Leave it empty if all were recalled."
          : `${counted(missed.numbers.length, "card")} missed, and taken to have been asked again until recalled.`}
      </span>
      {missed.problems.length > 0 ? (
        <ul className="field-problem" role="alert">
          {missed.problems.map(({ typed, reason, near }) => (
            <li key={typed}>
              {capital(reason)}
              {near.map((one) => (
                <button
                  key={one}
                  type="button"
                  className="quiet"
                  onClick={() => set(text.replace(typed, printedNumber(one)))}
                >
                  {printedNumber(one)} instead
                </button>
              ))}
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

type Order = Parameters<typeof api.enterPaper>[0][number];

function useRecord(order: Order, sound: boolean) {
  const refresh = useRefresh();
  const notify = useNotify();
  const takeBack = useTakeBackPaper();
  const wanted = JSON.stringify(sound ? order : null);
  const settled = useDebounced(wanted, TYPING_MS);
  const asked = JSON.parse(settled) as Order | null;
  const preview = useQuery({
    queryKey: [...KEYS.paper, "preview", settled],
    queryFn: async () => (asked ? ((await api.previewPaper([asked])).outcomes[0] ?? null) : null),
    enabled: asked !== null,
    placeholderData: keepPreviousData,
    retry: false,
  });
  const record = useMutation({
    mutationFn: () => api.enterPaper([order]),
    onSuccess: async ({ outcomes }) => {
      await refresh();
      const [done] = outcomes;
      if (done) notify(`Recorded: ${longDate(done.date)}.`, () => takeBack.mutate([done.sitting]));
    },
  });
  const ready = sound && settled === wanted && preview.isSuccess && !preview.isPlaceholderData;
  return { record, preview: { data: preview.data, error: sound ? preview.error : null, ready } };
}

/** What the results come to, in a sentence. */
function outcomeWords({ recalled, missed, kept, introduced, left }: PaperOutcome): string {
  const parts = [
    recalled - kept > 0 ? `${counted(recalled - kept, "recalled card")} move on` : "",
    kept > 0 ? `${counted(kept, "card")} ${kept === 1 ? "is" : "are"} kept for good` : "",
    missed > 0 ? `${counted(missed, "missed card")} go back to compartment 1` : "",
    introduced > 0 ? `${counted(introduced, "new card")} come into the box` : "",
    left > 0 ? `${counted(left, "card")} stay due` : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "" : `${capital(parts.join(", "))}.`;
}
