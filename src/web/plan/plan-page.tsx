// What will this cost, and which chart should I use? Worked out in the browser; the box changes only on saving.
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from "react";
import type { PlanView } from "../../app/views.ts";
import type { NewCardSchedule } from "../../core/load/new-cards.ts";
import { usePlan } from "../data/queries.ts";
import { useDebounced } from "../data/use-debounced.ts";
import { useNotify } from "../shell/notices.tsx";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded, Waiting } from "../shell/states.tsx";
import { useNewDay } from "../today/use-new-day.ts";
import { capital } from "../words.ts";
import { AffordPanel } from "./afford/afford-panel.tsx";
import { CalendarPanel } from "./calendar/calendar-panel.tsx";
import { ChartsPanel } from "./charts/charts-panel.tsx";
import { MoreDials, PlanDials } from "./dials/plan-dials.tsx";
import { scheduleWords } from "./dials/schedule.ts";
import { type PlanDraft, posteriorOf, questionOf } from "./plan-draft.ts";
import { ReadyPanel } from "./ready/ready-panel.tsx";
import { RestCalendar } from "./rest/rest-calendar.tsx";
import { type Draft, useDraft } from "./use-draft.ts";
import type { LoadUnit } from "./workers/mix-worker.ts";
import { useLoad } from "./workers/use-load.ts";
import { YearLoad } from "./year/year-load.tsx";
import { meanWords, worstWords } from "./year/year-words.ts";
import "../styles/plan.css";

/** The Plan page. */
export function PlanPage() {
  const plan = usePlan();
  return (
    <>
      <PageHeading title="Plan">Plan</PageHeading>
      <Loaded query={plan} what="the plan">
        {(view) => <Plan key={view.box?.id ?? ""} view={view} />}
      </Loaded>
    </>
  );
}

/** How long the load stands still before the calendar is shaded anew and its worst day is read out. */
const SETTLED_MS = 400;

const REST_PARTS = ["restWeekdays", "restDates"] as const;

function Plan({ view }: { readonly view: PlanView }) {
  useNewDay(view.calendar);
  const plan = useDraft(view);
  const { draft, differs, change, drop } = plan;
  const [unit, setUnit] = useState<LoadUnit>("cards");
  const [uncertain, setUncertain] = useState(true);
  const question = useMemo(() => questionOf(view, draft), [view, draft]);
  const { box, visits } = view;
  const { chart, recall } = draft;
  const posterior = useMemo(() => posteriorOf({ box, visits }, { chart, recall }), [box, visits, chart, recall]);
  const { load, failed } = useLoad(question, uncertain ? posterior : null, unit);
  const settled = useDebounced(load?.days, SETTLED_MS);
  const late = useLateSchedule(draft);
  const take = useTake(plan);
  const dropRest = useCallback(() => drop(REST_PARTS), [drop]);
  if (failed) return <Broken />;
  return (
    <>
      {load ? <p className="lead plan-lead">{`${worstWords(load.days, unit)} ${meanWords(load.days)}`}</p> : null}
      <p className="visually-hidden" role="status">
        {settled && differs.size > 0 ? worstWords(settled, unit) : null}
      </p>
      {load ? (
        <YearLoad
          load={load}
          chart={draft.chart}
          label={labelOf(draft, differs)}
          unit={unit}
          onUnit={setUnit}
          bands={posterior === null ? "known" : uncertain ? "recall" : "chance"}
          onBands={(bands) => setUncertain(bands === "recall")}
          dials={<PlanDials view={view} plan={plan} />}
          more={<MoreDials view={view} plan={plan} />}
        />
      ) : (
        <Waiting what="the year's load" />
      )}
      <ChartsPanel view={view} draft={late} onDraft={change} />
      <AffordPanel view={view} draft={late} take={take} />
      <ReadyPanel view={view} draft={late} take={take} />
      <RestCalendar
        view={view}
        days={settled ?? NO_DAYS}
        restWeekdays={draft.restWeekdays}
        restDates={draft.restDates}
        differs={REST_PARTS.some((part) => differs.has(part))}
        change={change}
        drop={dropRest}
      />
      <CalendarPanel view={view} />
    </>
  );
}

const NO_DAYS = [] as const;

/** The draft whose new cards may lag behind: under a moving slider the load goes before the panels further down. */
function useLateSchedule(draft: PlanDraft): PlanDraft {
  const schedule = useDeferredValue(draft.schedule);
  const { chart, recall, restWeekdays, restDates, policy, missed, stockEnds } = draft;
  return useMemo(
    () => ({ schedule, chart, recall, restWeekdays, restDates, policy, missed, stockEnds }),
    [schedule, chart, recall, restWeekdays, restDates, policy, missed, stockEnds],
  );
}

/** Takes a pace into the plan, says so, since the dials may be out of sight, and offers the way back. */
function useTake({ draft, change }: Draft): (schedule: NewCardSchedule) => void {
  const notify = useNotify();
  const before = useRef(draft.schedule);
  useEffect(() => {
    before.current = draft.schedule;
  });
  return useCallback(
    (schedule) => {
      const was = before.current;
      change({ schedule });
      notify(`The plan has ${scheduleWords(schedule)}.`, () => change({ schedule: was }));
    },
    [change, notify],
  );
}

/** What tells this plan from others, in a few words. */
function labelOf(draft: PlanDraft, differs: Draft["differs"]): string {
  const { schedule, recall, policy } = draft;
  const words = [scheduleWords(schedule)];
  if (typeof recall === "number") words.push(`${Math.round(100 * recall)} of 100 recalled`);
  else if (recall !== null) words.push("recall by compartment");
  if (differs.has("chart")) words.push("another chart");
  if (differs.has("restDates") || differs.has("restWeekdays")) words.push("other rest days");
  if (draft.missed.length > 0) words.push(policy === "chart-waits" ? "the chart waits" : "the chart goes on");
  return capital(words.join(", "));
}

function Broken() {
  return (
    <div className="trouble" role="alert">
      <p>The load could not be worked out in this browser.</p>
      <button type="button" onClick={() => location.reload()}>
        Load the page again
      </button>
    </div>
  );
}
