// Results from paper: which day, which piles, and the numbers of the cards that were missed.
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { Link } from "wouter";
import type { BoxView } from "../../app/views.ts";
import type { LocalDate } from "../../core/calendar/local-date.ts";
import { api } from "../client.ts";
import { KEYS, useToday } from "../data/queries.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { useUnsaved } from "../shell/use-unsaved.ts";
import { DayField } from "./day-field.tsx";
import { type FilledDay, filledBy, type PaperOrder, UNTOUCHED } from "./filled-day.ts";
import { PaperForm } from "./paper-form.tsx";
import { PhotoReader } from "./photo/photo-reader.tsx";
import { PaperUndoPanel } from "./undo-panel.tsx";
import "../styles/paper.css";

/** Entering results. */
export function PaperPage() {
  const today = useToday();
  return (
    <>
      <PageHeading title="Enter paper results">Enter paper results</PageHeading>
      <Loaded query={today} what="the box">
        {({ box }) =>
          box ? (
            <Results box={box} />
          ) : (
            <p className="lead">
              Results are entered into a box, and there is none yet. <Link href="/">Set it up first</Link>.
            </p>
          )
        }
      </Loaded>
    </>
  );
}

function Results({ box }: { readonly box: BoxView }) {
  const [date, setDate] = useState<LocalDate | null>(null);
  const [filled, setFilled] = useState<ReadonlyMap<LocalDate, FilledDay>>(new Map());
  const [before, setBefore] = useState<readonly PaperOrder[]>([]);
  const day = useQuery({
    queryKey: [...KEYS.paper, "day", date, before],
    queryFn: () => api.paperDay(date, [...before]),
    // The form stays, and with it the focus, while another day comes.
    placeholderData: keepPreviousData,
  });
  const fill = (of: LocalDate, one: FilledDay): void => {
    setFilled(new Map(filled).set(of, one));
    // What is typed on one evening is of that day, though the page be looked at again on the next.
    setDate(of);
  };
  const last = before.at(-1)?.date ?? null;
  const back = (): void => {
    setBefore(before.slice(0, -1));
    setDate(last);
  };
  const startAfresh = (): void => {
    setBefore([]);
    setFilled(new Map());
  };
  useUnsaved(before.length > 0 || filled.size > 0, startAfresh);
  return (
    <Loaded query={day} what="the piles of the day">
      {(view) => {
        const next = view.dates.find((one) => one > view.date);
        const goOn = (to: LocalDate, order: PaperOrder | null): void => {
          if (order) setBefore([...before, order]);
          setDate(to);
        };
        return (
          <div className="paper-results">
            {before.length === 0 ? <PaperUndoPanel undo={view.undo} /> : null}
            <DayField view={view} after={last} set={setDate} />
            <details className="sheet">
              <summary>Read a photo of the sitting sheet</summary>
              <PhotoReader
                wanted={{ box: box.id, date: view.date }}
                onRead={(reading) => fill(view.date, filledBy(view, reading))}
              />
              <p className="hint">
                The photo stays on this device. <Link href="/paper/photo">Only read a sheet</Link> records nothing.
              </p>
            </details>
            <PaperForm
              view={view}
              box={box}
              filled={filled.get(view.date) ?? UNTOUCHED}
              set={(one) => fill(view.date, one)}
              before={before}
              onNext={next ? (order) => goOn(next, order) : null}
              onBack={last ? back : null}
              onRecorded={startAfresh}
              isLeaving={day.isPlaceholderData}
            />
          </div>
        );
      }}
    </Loaded>
  );
}
