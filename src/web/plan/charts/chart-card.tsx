// One of the charts side by side: its skyline, its figures, and a way to plan with it.
import { type RefObject, useId, useRef } from "react";
import type { Chart } from "../../../core/chart/chart.ts";
import type { Result } from "../../../core/result.ts";
import { SavePlot } from "../plots/save-plot.tsx";
import { chartCsv } from "./chart-csv.ts";
import { ChartDays } from "./chart-days.tsx";
import type { ChartFigures } from "./chart-figures.ts";
import type { ComparedChart } from "./compared-charts.ts";
import { figureLines, periodWords, skylineWords } from "./figure-words.ts";
import { Opened } from "./opened.tsx";
import { Skyline } from "./skyline.tsx";

interface ChartCardProps {
  readonly compared: ComparedChart;
  readonly figures: Result<ChartFigures, string>;
  /** Cards that reach the top of every skyline. */
  readonly most: number;
  /** Name of the group of choices. */
  readonly group: string;
  readonly chosen: boolean;
  readonly choose: () => void;
  /** Takes it from the page; null where it stays. */
  readonly putAway: (() => void) | null;
}

/** The card; the rows of cards that lie beside one another are level. */
export function ChartCard({ compared, figures, most, group, chosen, choose, putAway }: ChartCardProps) {
  const periods = useId();
  const card = useRef<HTMLLIElement>(null);
  const { name, chart } = compared;
  return (
    <li ref={card} className="chart-card" data-chosen={chosen ? "" : undefined}>
      <h3>
        <label className="chart-choice">
          <input type="radio" name={group} checked={chosen} onChange={choose} aria-describedby={periods} />
          <span>{name}</span>
        </label>
      </h3>
      <p className="hint" id={periods}>
        Days from visit to visit: {periodWords(chart.compartments.map(({ period }) => period))}
      </p>
      {figures.ok ? (
        <>
          <Skyline
            byDay={figures.value.byDay}
            mean={figures.value.mean}
            most={most}
            label={`${name}. ${skylineWords(figures.value)}`}
          />
          <ul className="chart-figures">
            {figureLines(figures.value).map(({ key, figure, words }) => (
              <li key={key}>
                <strong>{figure}</strong> <span>{words}</span>
              </li>
            ))}
          </ul>
        </>
      ) : (
        <p className="chart-none">{figures.error}</p>
      )}
      <div className="chart-foot">
        <Opened summary="Day by day">
          {() => (
            <>
              <ChartDays name={name} chart={chart} byDay={figures.ok ? figures.value.byDay : []} />
              {figures.ok ? <SaveChart card={card} name={name} chart={chart} figures={figures.value} /> : null}
            </>
          )}
        </Opened>
        {putAway ? (
          <button type="button" className="quiet" aria-label={`Put away: ${name}`} onClick={putAway}>
            Put away
          </button>
        ) : null}
      </div>
    </li>
  );
}

function SaveChart(props: {
  readonly card: RefObject<HTMLLIElement | null>;
  readonly name: string;
  readonly chart: Chart;
  readonly figures: ChartFigures;
}) {
  const { card, name, chart, figures } = props;
  const periods = periodWords(chart.compartments.map(({ period }) => period));
  return (
    <div className="row">
      <SavePlot
        plot={card}
        name={`chart-${fileWords(name)}`}
        said={{ title: `${name}: ${periods}`, description: skylineWords(figures) }}
        csv={() => chartCsv(chart, figures.byDay)}
      />
    </div>
  );
}

/** Lower case, with a dash for whatever file systems may not like. */
const fileWords = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
