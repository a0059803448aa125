// Charts on the Plan page: side by side, designed, searched for, and given to the box.
import { memo, useCallback, useMemo, useState } from "react";
import type { PlanView } from "../../../app/views.ts";
import type { Chart } from "../../../core/chart/chart.ts";
import { LEVELLED_CHART } from "../../../core/chart/make-chart.ts";
import { useNotify } from "../../shell/notices.tsx";
import type { PlanDraft } from "../plan-draft.ts";
import { overallRecall, recallBy } from "./by-chart.ts";
import { ChangePanel } from "./change-panel.tsx";
import { figuresPace } from "./chart-figures.ts";
import { chartKey, comparedCharts, type NamedChart } from "./compared-charts.ts";
import { DesignPanel } from "./design-panel.tsx";
import { LaddersPanel } from "./ladders-panel.tsx";
import { SetUpPanel } from "./set-up-panel.tsx";
import { SideBySide } from "./side-by-side.tsx";
import { TakeBackPanel } from "./take-back-panel.tsx";
import "../../styles/charts.css";

interface ChartsPanelProps {
  readonly view: PlanView;
  readonly draft: PlanDraft;
  readonly onDraft: (change: Partial<PlanDraft>) => void;
}

/** Every panel that is about charts. */
export const ChartsPanel = memo(function ChartsPanel({ view, draft, onDraft }: ChartsPanelProps) {
  const { box } = view;
  const { found, find, putAway } = useFoundCharts();
  const charts = useMemo(() => comparedCharts(box, found, draft.chart), [box, found, draft.chart]);
  const planned = chartKey(draft.chart);
  const name = charts.find(({ key }) => key === planned)?.name ?? "The planned chart";
  const choose = (chart: Chart): void => onDraft({ chart });
  const pace = figuresPace(draft);
  const notify = useNotify();
  const pick = (picked: NamedChart): void => {
    find(picked);
    choose(picked.chart);
    // The charts lie further up, perhaps out of sight.
    notify(`You are planning with “${picked.name}” now.`);
  };
  return (
    <>
      <SideBySide
        view={view}
        draft={draft}
        charts={charts}
        choose={choose}
        putAway={(key) => {
          // What is not on the page is not planned with.
          if (key === planned) choose(charts[0]?.chart ?? draft.chart);
          putAway(key);
        }}
      />
      {box && view.chartChange ? <TakeBackPanel box={box} change={view.chartChange} /> : null}
      {box && chartKey(box.chart) !== planned ? (
        <ChangePanel view={view} box={box} draft={draft} name={name} onFound={find} />
      ) : null}
      {box ? null : <SetUpPanel view={view} draft={draft} name={name} />}
      <DesignPanel
        begin={box?.chart ?? LEVELLED_CHART}
        recallFor={(chart) => recallBy(view, draft.recall, chart)}
        pace={pace}
        onFound={find}
        pick={pick}
        planned={planned}
      />
      <LaddersPanel recall={overallRecall(view, draft.recall)} pace={pace} pick={pick} planned={planned} />
    </>
  );
});

/** Charts that were designed or picked in this visit, each once, newest last. */
function useFoundCharts() {
  const [found, setFound] = useState<readonly NamedChart[]>([]);
  const putAway = useCallback(
    (key: string) => setFound((all) => all.filter(({ chart }) => chartKey(chart) !== key)),
    [],
  );
  const find = useCallback((one: NamedChart) => {
    const key = chartKey(one.chart);
    setFound((all) => [...all.filter(({ chart }) => chartKey(chart) !== key), one]);
  }, []);
  return { found, find, putAway };
}
