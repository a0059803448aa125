// The chart designer: how many compartments, how far apart, how many tabs; then the best chart that is found.
import { type FormEvent, useEffect, useState } from "react";
import type { Design, DesignQuestion } from "../../../core/chart/design-chart.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useTask } from "../workers/use-task.ts";
import type { NamedChart } from "./compared-charts.ts";
import { DesignAnswer, namedDesign } from "./design-answer.tsx";
import { DesignFields } from "./design-fields.tsx";
import { bareChart, firstForm, formPeriods, formTabs, tabsRange } from "./design-form.ts";
import { Working } from "./working.tsx";

interface DesignPanelProps {
  /** The chart whose periods and tabs the form begins with. */
  readonly begin: NamedChart["chart"];
  /** Chance of recall for a chart with these periods. */
  readonly recallFor: (chart: NamedChart["chart"]) => readonly number[];
  /** New cards a day for which loads are told. */
  readonly pace: number;
  /** A chart was found. */
  readonly onFound: (found: NamedChart) => void;
  /** Plans with a chart. */
  readonly pick: (picked: NamedChart) => void;
  /** Key of the chart that is planned with. */
  readonly planned: string;
}

/** The panel of the designer. */
export function DesignPanel({ begin, recallFor, pace, onFound, pick, planned }: DesignPanelProps) {
  const [form, setForm] = useState(() => firstForm(begin));
  const [tried, setTried] = useState(false);
  const [asked, setAsked] = useState<DesignQuestion | null>(null);
  const task = useTask("design");
  const periods = formPeriods(form);
  const look = (question: DesignQuestion): void => {
    setAsked(question);
    task.start(question);
  };
  const find = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (!periods.ok || task.busy) return;
    const tabs = formTabs(form, tabsRange(periods.value));
    look({ periods: periods.value, recall: recallFor(bareChart(periods.value)), tabs });
  };
  const stop = (): void => {
    // The answer that stays is to another question.
    setAsked(null);
    task.stop();
  };
  useFound(task.answer?.ok ? task.answer.value : null, onFound);
  return (
    <section className="sheet" aria-labelledby="charts-design">
      <h2 id="charts-design">Design a chart</h2>
      <p>Bundles and starting days that keep the worst day as low as they can with so many tabs.</p>
      <div className="design-desk">
        <form className="design-form" onSubmit={find}>
          <DesignFields
            form={form}
            periods={periods}
            showProblem={tried}
            change={(part) => setForm((all) => ({ ...all, ...part }))}
          />
          <p className="begin-row">
            <BusyButton type="submit" className="primary" busy={task.busy}>
              Find a chart
            </BusyButton>
          </p>
        </form>
        <div className="design-side">
          {task.busy ? <Working words="Trying charts …" stop={stop} /> : null}
          <DesignAnswer task={task} asked={asked} pace={pace} pick={pick} planned={planned} again={look} />
        </div>
      </div>
    </section>
  );
}

/** Hands every new design on, once. */
function useFound(design: Design | null, onFound: DesignPanelProps["onFound"]): void {
  useEffect(() => {
    if (design) onFound(namedDesign(design));
  }, [design, onFound]);
}
