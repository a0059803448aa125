// Rest days on a calendar of the coming year, with what each day is expected to ask.
import { memo, useMemo, useRef, useState } from "react";
import type { BoxView, PlanView } from "../../../app/views.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Trouble } from "../../shell/states.tsx";
import { Holidays, NO_HOLIDAY } from "../../today/holidays.tsx";
import { useSaveBox } from "../dials/save-box.ts";
import { type CalendarMonth, monthsFrom } from "./month-days.ts";
import { MonthGrid } from "./month-grid.tsx";
import { mergedRanges } from "./rest-ranges.ts";
import { type Rest, useRestToggles } from "./use-rest-toggles.ts";
import { useRoving } from "./use-roving.ts";

/** Months that are shown, at first and in all. */
const MONTHS = { first: 3, all: 12 } as const;

interface RestCalendarProps extends Rest {
  readonly view: PlanView;
  /** The load that shades the days; it may lag behind a moving slider. */
  readonly days: readonly PlanDay[];
  readonly differs: boolean;
  readonly change: (part: Partial<Rest>) => void;
  /** Forgets what was changed about rest days, once it is saved or left. */
  readonly drop: () => void;
}

/** The panel of rest days. */
export const RestCalendar = memo(function RestCalendar(props: RestCalendarProps) {
  const { view, days, restWeekdays, restDates, differs, change, drop } = props;
  const [all, setAll] = useState(false);
  const [typed, setTyped] = useState(NO_HOLIDAY);
  const months = useMemo(() => monthsFrom(view.from, all ? MONTHS.all : MONTHS.first), [view.from, all]);
  return (
    <section className="sheet rest-calendar" aria-labelledby="rest-days">
      <h2 id="rest-days">Rest days</h2>
      <p className="hint">
        Press a day to rest on it, a weekday’s name to rest on it every week. With Shift, all days since the last one
        pressed follow it. The small numbers are the cards to expect.
      </p>
      <Months
        months={months}
        view={view}
        days={days}
        restWeekdays={restWeekdays}
        restDates={restDates}
        change={change}
      />
      {all ? null : (
        <button type="button" onClick={() => setAll(true)}>
          Show all twelve months
        </button>
      )}
      <Holidays
        ranges={restDates.filter(({ to }) => to >= view.from)}
        typed={typed}
        onType={setTyped}
        onChange={(ranges) =>
          change({ restDates: mergedRanges([...restDates.filter(({ to }) => to < view.from), ...ranges]) })
        }
      />
      {view.box ? (
        <SaveRest box={view.box} rest={{ restWeekdays, restDates }} differs={differs} drop={drop} />
      ) : (
        <p className="hint">Rest days are kept once a box is set up.</p>
      )}
    </section>
  );
});

function Months(
  props: Rest & Pick<RestCalendarProps, "view" | "days" | "change"> & { months: readonly CalendarMonth[] },
) {
  const { months, view, days, restWeekdays, restDates, change } = props;
  const region = useRef<HTMLDivElement>(null);
  const { note, onDay, onWeekday } = useRestToggles({ restWeekdays, restDates }, change);
  const { stopOf, onKey } = useRoving(region, view.from);
  const cards = useMemo(
    () => new Map(days.flatMap(({ date, kind, reviews }) => (kind === "sitting" ? [[date, reviews.mean]] : []))),
    [days],
  );
  const most = Math.max(0, ...cards.values());
  return (
    <>
      <div ref={region} className="months">
        {months.map((month) => (
          <MonthGrid
            key={month.month}
            month={month}
            from={view.from}
            restWeekdays={restWeekdays}
            restDates={restDates}
            cards={cards}
            most={most}
            stop={stopOf(month.month)}
            onDay={onDay}
            onWeekday={onWeekday}
            onKey={onKey}
          />
        ))}
      </div>
      <p className="hint" role="status">
        {note}
      </p>
    </>
  );
}

function SaveRest(props: {
  readonly box: BoxView;
  readonly rest: Rest;
  readonly differs: boolean;
  readonly drop: () => void;
}) {
  const { box, rest, differs, drop } = props;
  const save = useSaveBox();
  const saveRest = (): void =>
    save.mutate({
      change: { restWeekdays: [...rest.restWeekdays], restDates: [...rest.restDates] },
      before: { restWeekdays: [...box.calendar.restWeekdays], restDates: [...box.calendar.restDates] },
      said: "Rest days saved.",
      done: drop,
    });
  return (
    <>
      <div className="row save-row">
        <BusyButton className="primary" busy={save.isPending || !differs} onClick={saveRest}>
          Save rest days
        </BusyButton>
        {differs ? (
          <button type="button" className="quiet" onClick={drop}>
            Leave them as they were
          </button>
        ) : null}
        <span className="hint">{differs ? "Not saved yet." : "These are the rest days of your box."}</span>
      </div>
      {save.error ? <Trouble error={save.error} retry={saveRest} /> : null}
    </>
  );
}
