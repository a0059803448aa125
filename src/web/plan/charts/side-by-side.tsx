// Charts side by side: what each costs in the long run, and which one the plan goes by.
import { useId, useMemo } from "react";
import type { PlanView } from "../../../app/views.ts";
import type { Chart } from "../../../core/chart/chart.ts";
import type { PlanDraft } from "../plan-draft.ts";
import { recallBy } from "./by-chart.ts";
import { ChartCard } from "./chart-card.tsx";
import { chartFigures, figuresPace, meanPace } from "./chart-figures.ts";
import { type ComparedChart, chartKey } from "./compared-charts.ts";
import { paceWords } from "./figure-words.ts";

interface SideBySideProps {
  readonly view: PlanView;
  readonly draft: PlanDraft;
  readonly charts: readonly ComparedChart[];
  readonly choose: (chart: Chart) => void;
  readonly putAway: (key: string) => void;
}

/** The cards, one of which is chosen. */
export function SideBySide({ view, draft, charts, choose, putAway }: SideBySideProps) {
  const group = useId();
  const chosen = chartKey(draft.chart);
  const { recall } = draft;
  const pace = figuresPace(draft);
  const rows = useMemo(
    () =>
      charts.map((compared) => ({
        compared,
        figures: chartFigures(compared.chart, recallBy(view, recall, compared.chart), pace),
      })),
    [charts, view, recall, pace],
  );
  const most = Math.max(1, ...rows.map(({ figures }) => (figures.ok ? figures.value.peak : 0)));
  return (
    <section className="sheet" aria-labelledby="charts-side-by-side">
      <h2 id="charts-side-by-side">Charts side by side</h2>
      <p>
        What each chart asks in the long run, {paceWords(meanPace(draft), pace)}{" "}
        {recallSentence(draft, view.box !== null)}
      </p>
      <fieldset className="chart-choices">
        <legend>Plan with</legend>
        <ul className="chart-cards">
          {rows.map(({ compared, figures }) => (
            <ChartCard
              key={compared.key}
              compared={compared}
              figures={figures}
              most={most}
              group={group}
              chosen={compared.key === chosen}
              choose={() => choose(compared.chart)}
              putAway={compared.found ? () => putAway(compared.key) : null}
            />
          ))}
        </ul>
      </fieldset>
      <p className="hint">
        The drawings show the cards of each day of a chart’s cycle, all to one scale; the broken line is the mean. On
        screen tabs cost nothing; on paper each is one more to cut and to find. The recall a year on is a prediction: a
        kept card is taken for one of a further compartment, whose wait has grown once more as the mean wait did before,
        and recall to fall as a power of the days.
      </p>
    </section>
  );
}

const recallSentence = ({ recall }: PlanDraft, box: boolean): string => {
  if (recall !== null && typeof recall !== "number")
    return "Recall is planned by compartment; the last number holds for all compartments beyond.";
  if (recall !== null) return `Recall is taken to be ${Math.round(recall * 100)}\u00a0% in every compartment.`;
  return box
    ? "Recall is what your box has measured; a chart with other waits has it from the compartments nearest to them."
    : "";
};
