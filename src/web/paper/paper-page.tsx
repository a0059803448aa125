// Results from paper: which day, which piles, and the numbers of the cards that were missed.
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { Link } from "wouter";
import type { BoxView, PaperDayView } from "../../app/views.ts";
import type { LocalDate } from "../../core/calendar/local-date.ts";
import type { SheetReading } from "../../core/paper/sheet-reading.ts";
import { api } from "../client.ts";
import { KEYS, useToday } from "../data/queries.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { longDate } from "../words.ts";
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
  const [reading, setReading] = useState<SheetReading | null>(null);
  const day = useQuery({ queryKey: [...KEYS.paper, date], queryFn: () => api.paperDay(date) });
  const take = (read: SheetReading): void => {
    setDate(read.date);
    setReading(read);
  };
  return (
    <Loaded query={day} what="the piles of the day">
      {(view) => (
        <div className="paper-results">
          <PaperUndoPanel undo={view.undo} />
          <DateField view={view} set={setDate} />
          <details className="sheet">
            <summary>Read a photo of the sitting sheet</summary>
            <PhotoReader wanted={{ box: box.id, date: view.date }} onRead={take} />
            <p className="hint">
              The photo stays on this device. <Link href="/paper/photo">Only read a sheet</Link> records nothing.
            </p>
          </details>
          {/* Another day, or another photo, begins a new form. */}
          <PaperForm
            key={`${view.date} ${reading?.sheet ?? ""}`}
            view={view}
            box={box}
            reading={reading?.date === view.date ? reading : null}
          />
        </div>
      )}
    </Loaded>
  );
}

function DateField({ view, set }: { readonly view: PaperDayView; readonly set: (date: LocalDate) => void }) {
  return (
    <label className="field">
      <span>Which day</span>
      <select value={view.date} onChange={(event) => set(event.target.value as LocalDate)}>
        {view.dates.toReversed().map((date) => (
          <option key={date} value={date}>
            {longDate(date)}
          </option>
        ))}
      </select>
      <span className="hint">Days are entered in their order, the earliest first.</span>
    </label>
  );
}
