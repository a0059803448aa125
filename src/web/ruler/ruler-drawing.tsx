// The lines of the ruler as SVG. What they say stands in a table beside them.
import { isoWeekday } from "../../core/calendar/local-date.ts";
import { counted, shortDate } from "../words.ts";
import { loadHeight, loadPath, RULER, type Tick } from "./ruler-geometry.ts";

const EDGE = RULER.load;
const HEIGHT = RULER.load + RULER.body;
/** How deep today's notch is cut. */
const NOTCH = 12;
const NUMBERS = EDGE + RULER.longest + 17;
const DATES = EDGE + RULER.longest + 36;

/** The drawing; `width` is its length in CSS pixels. */
export function RulerDrawing({ ticks, width }: { readonly ticks: readonly Tick[]; readonly width: number }) {
  const today = ticks.find((tick) => tick.when === "today");
  const most = Math.max(0, ...ticks.map((tick) => tick.reviews));
  // Without a load there is nothing above the edge but today's line.
  const top = most > 0 ? 0 : EDGE - 14;
  return (
    <svg
      className="ruler-drawing"
      width={width}
      height={HEIGHT - top}
      viewBox={`0 ${top} ${width} ${HEIGHT - top}`}
      aria-hidden="true"
    >
      <path className="ruler-body" d={bodyPath(width, today?.x ?? null)} />
      {most > 0 ? <Load ticks={ticks} most={most} /> : null}
      {today ? <path className="now-line" d={`M${today.x} ${EDGE + NOTCH}V${top + 10}`} /> : null}
      {ticks.map((tick) => (
        <TickMark key={tick.date} tick={tick} />
      ))}
      {ticks.map((tick) => (
        <TickLabels key={tick.date} tick={tick} today={today ?? null} />
      ))}
    </svg>
  );
}

/** The ruler's outline, with a notch cut into the edge at today. */
function bodyPath(width: number, notch: number | null): string {
  const cut = notch === null ? "" : `H${notch - 11}L${notch} ${EDGE + NOTCH}L${notch + 11} ${EDGE}`;
  return `M1 ${EDGE}${cut}H${width - 1}V${HEIGHT - 5}q0 4-4 4H5q-4 0-4-4Z`;
}

function Load({ ticks, most }: { readonly ticks: readonly Tick[]; readonly most: number }) {
  const now = ticks.findIndex((tick) => tick.when === "today");
  const past = ticks.slice(0, now + 1);
  const ahead = ticks.slice(Math.max(0, now));
  const first = ticks[0];
  const last = ticks.at(-1);
  const peak = ticks.reduce((a, b) => (b.reviews > a.reviews ? b : a));
  const anchor = peak.x < 90 ? "start" : last && peak.x > last.x - 90 ? "end" : "middle";
  if (!first || !last) return null;
  return (
    <g>
      <path className="load-area" d={`${loadPath(ticks, most)}L${last.x} ${EDGE}L${first.x} ${EDGE}Z`} />
      <path className="load-line" d={loadPath(past, most)} />
      <path className="load-line ahead" d={loadPath(ahead, most)} />
      <text className="load-label" x={peak.x} y={loadHeight(peak.reviews, most) - 6} textAnchor={anchor}>
        {counted(peak.reviews, "card")}
      </text>
    </g>
  );
}

function TickMark({ tick }: { readonly tick: Tick }) {
  const { x, length, when } = tick;
  // A bare pattern has no dates to name.
  const title =
    when === "ahead" && tick.reviews === 0 ? null : <title>{`${shortDate(tick.date)}: ${tickWords(tick)}`}</title>;
  if (tick.rest || length === 0) return <circle className="tick-rest" cx={x} cy={EDGE + 8} r={2.6} />;
  if (when === "today")
    return (
      <rect className="tick-today" x={x - 2.5} y={EDGE + NOTCH} width={5} height={Math.max(8, length - 6)} rx={1.5} />
    );
  if (when === "ahead") {
    return (
      <rect className="tick-ahead" x={x - 1} y={EDGE + 1} width={2} height={length} rx={1}>
        {title}
      </rect>
    );
  }
  return (
    <rect
      className={tick.missed ? "tick-missed" : "tick-sat"}
      x={x - 2.75}
      y={EDGE + 1}
      width={5.5}
      height={length}
      rx={1.5}
    >
      {title}
    </rect>
  );
}

function TickLabels({ tick, today }: { readonly tick: Tick; readonly today: Tick | null }) {
  const fromToday = today === null ? Number.POSITIVE_INFINITY : Math.abs(tick.x - today.x);
  const numbered = tick.chartDay !== null && tick.chartDay % 4 === 0 && fromToday > 26;
  const dated = today !== null && isoWeekday(tick.date) === 1 && fromToday > 52;
  return (
    <>
      {numbered ? (
        <text className="ruler-number" x={tick.x} y={NUMBERS} textAnchor="middle">
          {tick.chartDay}
        </text>
      ) : null}
      {tick.when === "today" ? (
        <>
          <text className="ruler-number today" x={tick.x} y={NUMBERS} textAnchor="middle">
            {tick.chartDay}
          </text>
          <text className="ruler-date today" x={tick.x} y={DATES} textAnchor="middle">
            today
          </text>
        </>
      ) : null}
      {dated ? (
        <text className="ruler-date" x={tick.x} y={DATES} textAnchor="middle">
          {shortDate(tick.date).slice(4)}
        </text>
      ) : null}
    </>
  );
}

/** What a tick stands for, in words. */
export function tickWords(tick: Tick): string {
  if (tick.rest) return "rest day";
  if (tick.missed) return "missed";
  const visit = tick.top > 0 ? `up to compartment ${tick.top}` : "no visit";
  if (tick.when !== "past") return `${visit}, ${tick.when === "today" ? "" : "about "}${counted(tick.reviews, "card")}`;
  return `${visit}, ${counted(tick.reviews, "card")} asked`;
}
