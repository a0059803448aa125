// The trade-off behind a date: when new cards end against how many are recalled, as a plot and as a table.
import { type RefObject, useRef, useState } from "react";
import { addDays, type LocalDate } from "../../../core/calendar/local-date.ts";
import type { DeadlineChoice, DeadlinePlan } from "../../../core/load/deadline.ts";
import { useWidth } from "../../ruler/use-width.ts";
import { count, shortDate, yearDate } from "../../words.ts";
import { csvText } from "../plots/csv-text.ts";
import { niceScale } from "../plots/nice-scale.ts";
import { PlotCursor } from "../plots/plot-cursor.tsx";
import { SavePlot } from "../plots/save-plot.tsx";
import {
  CURVE_BASE,
  CURVE_PLOT,
  type CurveFrame,
  curvePaths,
  dateX,
  nearestChoice,
  numberY,
} from "./curve-geometry.ts";
import { choiceWords, readyWords, type Wish } from "./ready-words.ts";

const { left, right, head, foot } = CURVE_PLOT;
const HEIGHT = CURVE_BASE + foot;

interface ReadyCurveProps {
  readonly plan: DeadlinePlan;
  readonly wish: Wish;
  readonly from: LocalDate;
  /** Where the numbers come from. */
  readonly caution: string;
}

/** The curve of a plan for a date, with what belongs to it. */
export function ReadyCurve({ plan, wish, from, caution }: ReadyCurveProps) {
  const { curve } = plan;
  const plot = useRef<HTMLDivElement>(null);
  const said = {
    title: `Cards recalled on ${yearDate(wish.by)} by the last day of new cards`,
    description: [...readyWords(plan, wish), caution].join(" "),
  };
  return (
    <figure className="ready-curve">
      <figcaption>
        <h3>The trade-off</h3>
        <p className="hint">
          Each point is the fastest pace that keeps within the time, if new cards end on that day. Ending earlier leaves
          more visits before the date; ending later lets more cards in.
        </p>
      </figcaption>
      <CurvePlot plot={plot} plan={plan} from={from} to={addDays(wish.by, -1)} />
      <div className="row">
        <SavePlot plot={plot} name={`ready-by-${wish.by}`} said={said} csv={() => curveCsv(curve)} />
      </div>
      <CurveTable curve={curve} />
    </figure>
  );
}

function CurvePlot(props: {
  readonly plot: RefObject<HTMLDivElement | null>;
  readonly plan: DeadlinePlan;
  readonly from: LocalDate;
  readonly to: LocalDate;
}) {
  const { plot, plan, from, to } = props;
  const { curve, best } = plan;
  const width = useWidth(plot);
  const [moved, setMoved] = useState<number | null>(null);
  const bestAt = curve.findIndex(({ last }) => last === best.last);
  const at = Math.max(0, Math.min(moved ?? bestAt, curve.length - 1));
  const here = curve[at];
  const words = here ? choiceWords(here) : "";
  const { top, marks } = niceScale(Math.max(...curve.map(({ introduced }) => introduced)));
  const frame = { width, from, to, top };
  return (
    <>
      <PlotCursor
        plot={plot}
        label="Last day of new cards"
        count={curve.length}
        at={at}
        words={words}
        leap={(place, direction) => place + direction * Math.max(1, Math.round(curve.length / 10))}
        nearest={(x) => nearestChoice(curve, x, frame)}
        onMove={setMoved}
      >
        {width > 0 ? <CurveDrawing plan={plan} frame={frame} marks={marks} here={here} /> : null}
      </PlotCursor>
      <p className="plot-words">{words}</p>
    </>
  );
}

function CurveDrawing(props: {
  readonly plan: DeadlinePlan;
  readonly frame: CurveFrame;
  readonly marks: readonly number[];
  readonly here: DeadlineChoice | undefined;
}) {
  const { plan, frame, marks, here } = props;
  const { width, from, to, top } = frame;
  const { mean, band } = curvePaths(plan.curve, frame);
  const place = (choice: DeadlineChoice) => ({
    x: dateX(choice.last ?? from, frame),
    y: numberY(choice.recalled.mean, top),
  });
  const cursor = here && place(here);
  return (
    <svg className="year-drawing" width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} aria-hidden="true">
      <text className="axis-name" x={left} y={13}>
        cards recalled on the date
      </text>
      {marks.map((mark) => (
        <g key={mark}>
          <path className="grid-line" d={`M${left} ${numberY(mark, top)}H${width - right}`} />
          <text className="axis-mark" x={left - 7} y={numberY(mark, top) + 4} textAnchor="end">
            {count(mark)}
          </text>
        </g>
      ))}
      <path className="load-band" d={band} />
      <path className="load-mean" d={mean} />
      <text className="axis-mark" x={left} y={CURVE_BASE + 19}>
        {shortDate(from).slice(4)}
      </text>
      <text className="axis-mark" x={width - right} y={CURVE_BASE + 19} textAnchor="end">
        {shortDate(to).slice(4)}
      </text>
      {plan.gentle.each < plan.best.each ? <Mark {...place(plan.gentle)} name="gentler" /> : null}
      <Mark {...place(plan.best)} name="best" />
      {cursor ? (
        <g data-screen="">
          <path className="cursor-line" d={`M${cursor.x} ${head - 4}V${CURVE_BASE}`} />
          <circle className="cursor-dot" cx={cursor.x} cy={cursor.y} r={4.5} />
        </g>
      ) : null}
    </svg>
  );
}

function Mark({ x, y, name }: { readonly x: number; readonly y: number; readonly name: string }) {
  return (
    <>
      <circle className={name === "best" ? "choice-best" : "choice-gentle"} cx={x} cy={y} r={6} />
      <text className="axis-name" x={x + 10} y={y + 20}>
        {name}
      </text>
    </>
  );
}

function CurveTable({ curve }: { readonly curve: readonly DeadlineChoice[] }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="plot-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The same as a table</summary>
      {open ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
        <section className="table-scroll" aria-label="The trade-off in figures" tabIndex={0}>
          <table className="plan-table">
            <thead>
              <tr>
                <th scope="col">Last new cards</th>
                <th scope="col">A day</th>
                <th scope="col">Introduced</th>
                <th scope="col">Recalled</th>
                <th scope="col">Nine in ten</th>
              </tr>
            </thead>
            <tbody>
              {curve.map(({ last, each, introduced, recalled }) => (
                <tr key={last}>
                  <th scope="row">{last === null ? "none" : yearDate(last)}</th>
                  <td>{each}</td>
                  <td>{count(introduced)}</td>
                  <td>{count(recalled.mean)}</td>
                  <td>{recalled.quantiles.map(count).join(" to ")}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ) : null}
    </details>
  );
}

const curveCsv = (curve: readonly DeadlineChoice[]): string =>
  csvText(
    ["last_new_cards", "new_cards_a_day", "introduced", "recalled_mean", "recalled_sd", "recalled_q05", "recalled_q95"],
    curve.map(({ last, each, introduced, recalled }) => [
      last,
      each,
      introduced,
      recalled.mean,
      recalled.sd,
      ...recalled.quantiles,
    ]),
  );
