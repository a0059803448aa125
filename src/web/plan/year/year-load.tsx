// The year's load: a skyline with its band, a plan pinned beside it, a sentence for each day, and the same as a table.
import { type ReactNode, type RefObject, useCallback, useRef, useState } from "react";
import type { Chart } from "../../../core/chart/chart.ts";
import { ENOUGH_SETS } from "../../../core/load/mixed-load.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { useWidth } from "../../ruler/use-width.ts";
import { PlotCursor } from "../plots/plot-cursor.tsx";
import { SavePlot } from "../plots/save-plot.tsx";
import type { LoadUnit } from "../workers/mix-worker.ts";
import type { Load } from "../workers/use-load.ts";
import { yearCsv } from "./year-csv.ts";
import { YearDrawing } from "./year-drawing.tsx";
import { monthLeap, worstAt } from "./year-figures.ts";
import { dayAt, stepFor } from "./year-geometry.ts";
import { YearTable } from "./year-table.tsx";
import { bandMeaning, comparedWords, dayWords, meanWords, spanWords, worstWords } from "./year-words.ts";

/** What the bands hold: chance alone, where recall is `known` or the reader wants it so, or what is not known of recall too. */
export type Bands = "known" | "chance" | "recall";

interface YearLoadProps {
  readonly load: Load;
  readonly chart: Chart;
  /** The plan in a few words, for the label of a pinned one. */
  readonly label: string;
  readonly unit: LoadUnit;
  readonly onUnit: (unit: LoadUnit) => void;
  readonly bands: Bands;
  readonly onBands: (bands: Bands) => void;
  /** The dials, which stand where the plot is seen, and what else is turned less often. */
  readonly dials: ReactNode;
  readonly more: ReactNode;
}

interface Pinned {
  readonly days: readonly PlanDay[];
  readonly label: string;
}

/** The figure and all that belongs to it. */
export function YearLoad(props: YearLoadProps) {
  const { load, chart, label, unit, onUnit, bands, onBands, dials, more } = props;
  const { days } = load;
  const [pinned, setPinned] = useState<Pinned | null>(null);
  // A plan pinned yesterday does not lie under today's dates.
  const beside = pinned?.days[0]?.date === days[0]?.date ? pinned : null;
  const plot = useRef<HTMLDivElement>(null);
  const said = {
    title: `The load of a card box, ${spanWords(days)}`,
    description: [worstWords(days, unit), meanWords(days), bandMeaning(load.sets)].join(" "),
  };
  return (
    <section className="sheet year-load" aria-labelledby="year-load">
      <div className="plot-head">
        <h2 id="year-load">The year ahead</h2>
        <YearKey load={load} pinned={beside?.label ?? null} />
        <Choice name="unit" label="Count" value={unit} options={UNITS} onChange={onUnit} />
      </div>
      <YearPlot plot={plot} load={load} pinned={beside?.days ?? null} unit={unit} />
      {beside ? <p>{comparedWords(beside.days, days, unit)}</p> : null}
      {dials}
      <div className="row">
        <button type="button" onClick={() => setPinned(beside ? null : { days, label })}>
          {beside ? "Take the pinned plan away" : "Pin this to compare"}
        </button>
        <SavePlot
          plot={plot}
          name={`load-${days[0]?.date ?? ""}`}
          said={said}
          csv={() => yearCsv(days, chart)}
          busy={load.rough || !load.current}
        />
      </div>
      <BandWords load={load} bands={bands} onBands={onBands} />
      {more}
      <YearTable days={days} chart={chart} />
    </section>
  );
}

const UNITS = [
  { value: "cards", name: "Cards" },
  { value: "minutes", name: "Minutes" },
] as const;

/** A few choices side by side. */
function Choice<T extends string>(props: {
  readonly name: string;
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly name: string }[];
  readonly onChange: (value: T) => void;
}) {
  const { name, label, value, options, onChange } = props;
  return (
    <fieldset className="chips">
      <legend className="visually-hidden">{label}</legend>
      {options.map((option) => (
        <label key={option.value} className="chip">
          <input type="radio" name={name} checked={option.value === value} onChange={() => onChange(option.value)} />
          {option.name}
        </label>
      ))}
    </fieldset>
  );
}

function YearPlot(props: {
  readonly plot: RefObject<HTMLDivElement | null>;
  readonly load: Load;
  readonly pinned: readonly PlanDay[] | null;
  readonly unit: LoadUnit;
}) {
  const { plot, load, pinned, unit } = props;
  const { days } = load;
  const width = useWidth(plot);
  const step = stepFor(width, days.length);
  // Until the cursor is moved it stands on the worst day.
  const [moved, setMoved] = useState<number | null>(null);
  const at = Math.min(moved ?? worstAt(days, unit), days.length - 1);
  const leap = useCallback((from: number, direction: 1 | -1) => monthLeap(days, from, direction), [days]);
  const day = days[at];
  const words = day ? dayWords(day, unit) : "";
  return (
    <>
      <PlotCursor
        plot={plot}
        label="The load day by day"
        count={days.length}
        at={at}
        words={words}
        leap={leap}
        nearest={(x) => dayAt(x, step)}
        onMove={setMoved}
        busy={!load.current}
      >
        {width > 0 ? <YearDrawing days={days} pinned={pinned} unit={unit} width={width} step={step} at={at} /> : null}
      </PlotCursor>
      <p className="plot-words">{words}</p>
    </>
  );
}

function YearKey({ load, pinned }: { readonly load: Load; readonly pinned: string | null }) {
  const { days, sets } = load;
  return (
    <p className="ruler-key">
      <span className="key load">mean of a week</span>
      <span className="key day-mean">of a day</span>
      <span className="key band">nine days in ten: {sets > 0 ? "chance and recall" : "chance alone"}</span>
      {days.some(({ kind }) => kind === "rest") ? <span className="key rest-days">rest day</span> : null}
      {days.some(({ kind }) => kind === "missed") ? <span className="key missed-days">missed</span> : null}
      {pinned ? <span className="key pinned">pinned: {pinned}</span> : null}
    </p>
  );
}

/** Which of the two bands is shown, and how far it has come. */
function BandWords(props: {
  readonly load: Load;
  readonly bands: Bands;
  readonly onBands: (bands: Bands) => void;
}): ReactNode {
  const { load, bands, onBands } = props;
  return (
    <div className="band-words">
      <p className="hint">
        {bandMeaning(load.sets)}
        {bands === "recall" && !load.done ? (
          <>
            {" "}
            <span className="mixing">
              Still widening
              <progress value={load.sets} max={ENOUGH_SETS} aria-label="What is not yet known about recall, mixed in" />
            </span>
          </>
        ) : null}
      </p>
      {bands === "known" ? null : (
        <label className="choice">
          <input
            type="checkbox"
            checked={bands === "recall"}
            onChange={(event) => onBands(event.target.checked ? "recall" : "chance")}
          />
          <span>Let the band hold what is not yet known about my recall</span>
        </label>
      )}
    </div>
  );
}
