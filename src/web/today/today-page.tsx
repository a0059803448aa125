// What do I do now, and how long will it take?
import type { TodayView } from "../../app/views.ts";
import { useToday } from "../data/queries.ts";
import { Ruler } from "../ruler/ruler.tsx";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { HeldSitting } from "../sitting/held-sitting.tsx";
import { longDate } from "../words.ts";
import { FirstRun } from "./first-run.tsx";
import { MissedDays } from "./missed-days.tsx";
import { SetUpBox } from "./set-up-box.tsx";
import { BoxSettingsPanel } from "./settings.tsx";
import { SittingPanel } from "./sitting-panel.tsx";
import { useNewDay } from "./use-new-day.ts";

/** The first page. */
export function TodayPage() {
  const today = useToday();
  return (
    <Loaded query={today} what="today's work" heading="Today" otherwise={<HeldSitting />}>
      {(view) => {
        if (view.box) return <Day view={view} box={view.box} />;
        return view.facts === 0 ? <FirstRun /> : <SetUpBox facts={view.facts} />;
      }}
    </Loaded>
  );
}

function Day({ view, box }: { readonly view: TodayView; readonly box: NonNullable<TodayView["box"]> }) {
  const date = longDate(view.date);
  useNewDay(box.calendar);
  return (
    <>
      <PageHeading title="Today">
        {date}{" "}
        <span className="aside">
          — chart day {view.chartDay} of {view.cycle}
        </span>
      </PageHeading>
      <Ruler ruler={view.ruler} today={view.date} compartments={box.chart.compartments.length} />
      {view.missedDays > 0 && !view.sitting ? <MissedDays view={view} policy={box.calendar.policy} /> : null}
      {/* A new day or a finished sitting starts with a fresh panel. */}
      <SittingPanel
        key={`${view.date} ${view.sitting?.id ?? ""} ${view.newCards} ${view.stock}`}
        view={view}
        box={box}
      />
      <BoxSettingsPanel key={box.id} box={box} />
    </>
  );
}
