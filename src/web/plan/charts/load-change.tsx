// The load of the coming dates, by the chart as it is and by the new one.
import { useRef } from "react";
import { count, counted, shortDate } from "../../words.ts";
import { csvText } from "../plots/csv-text.ts";
import { SavePlot } from "../plots/save-plot.tsx";
import { loadWords } from "./change-words.ts";
import { type LoadOfDate, meanLoad } from "./chart-change.ts";
import { Opened } from "./opened.tsx";
import { Skyline } from "./skyline.tsx";

/** Two skylines to one scale, a sentence, and the figures behind them. */
export function LoadChange({ days }: { readonly days: readonly LoadOfDate[] }) {
  const most = Math.max(1, ...days.flatMap(({ before, after }) => [before, after]));
  const pair = useRef<HTMLDivElement>(null);
  const first = days[0]?.date ?? "";
  return (
    <div className="load-change">
      <div className="load-pair" ref={pair}>
        <LoadFigure name="As it is" days={days} when="before" most={most} />
        <LoadFigure name="With the new chart" days={days} when="after" most={most} />
      </div>
      <p>{loadWords(days)}</p>
      <Opened summary={`The ${days.length} days in figures`}>
        {() => (
          <>
            <LoadTable days={days} />
            <div className="row">
              <SavePlot
                plot={pair}
                name={`change-of-chart-${first}`}
                said={{
                  title: `The load before and after a change of chart, from ${first}`,
                  description: loadWords(days),
                }}
                csv={() => changeCsv(days)}
              />
            </div>
          </>
        )}
      </Opened>
    </div>
  );
}

const changeCsv = (days: readonly LoadOfDate[]): string =>
  csvText(
    ["date", "kind", "cards_before", "cards_after"],
    days.map(({ date, sits, before, after }) => [date, sits ? "sitting" : "none", before, after]),
  );

interface LoadFigureProps {
  readonly name: string;
  readonly days: readonly LoadOfDate[];
  readonly when: "before" | "after";
  /** Cards that reach the top. */
  readonly most: number;
}

function LoadFigure({ name, days, when, most }: LoadFigureProps) {
  const byDay = days.map((day) => day[when]);
  const mean = meanLoad(days, when);
  return (
    <figure>
      <Skyline
        byDay={byDay}
        mean={mean}
        most={most}
        label={`${name}: up to ${counted(Math.max(0, ...byDay), "card")} a day, mean of the practice days ${count(mean)}`}
      />
      <figcaption>{name}</figcaption>
    </figure>
  );
}

function LoadTable({ days }: { readonly days: readonly LoadOfDate[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
    <section className="chart-days" tabIndex={0} aria-label="The coming days in figures">
      <table>
        <thead>
          <tr>
            <th scope="col">Date</th>
            <th scope="col">As it is</th>
            <th scope="col">With the new chart</th>
          </tr>
        </thead>
        <tbody>
          {days.map(({ date, sits, before, after }) => (
            <tr key={date}>
              <th scope="row">{shortDate(date)}</th>
              <td>{sits ? count(before) : "no sitting"}</td>
              <td>{sits ? count(after) : "no sitting"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
