// The year's load in figures: a row for each month, and the days of one month when they are wanted.
import { type ReactNode, useState } from "react";
import { type Chart, chartDay } from "../../../core/chart/chart.ts";
import type { Spread } from "../../../core/load/exact-load.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { count, minuteWords, shortDate } from "../../words.ts";
import { longMonth } from "./month-names.ts";
import { type MonthPart, monthParts, sumUp } from "./year-figures.ts";

/** Folded away; its rows are made only while it is open. */
export function YearTable({ days, chart }: { readonly days: readonly PlanDay[]; readonly chart: Chart }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="plot-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The same as a table</summary>
      {open ? <OpenTable days={days} chart={chart} /> : null}
    </details>
  );
}

function OpenTable({ days, chart }: { readonly days: readonly PlanDay[]; readonly chart: Chart }) {
  const [month, setMonth] = useState("");
  const months = monthParts(days);
  const shown = months.find((part) => part.month === month);
  return (
    <>
      <Figures caption="The coming months" head={["Month", "Sittings", "Cards", "Minutes", "New", "Worst day"]}>
        {months.map((part) => (
          <MonthRow key={part.month} part={part} days={daysOf(days, part)} />
        ))}
      </Figures>
      <p className="hint">Cards, minutes and new cards are those of a mean sitting.</p>
      <label className="field inline">
        <span>Day by day</span>
        <select value={month} onChange={(event) => setMonth(event.target.value)}>
          <option value="">not shown</option>
          {months.map((part) => (
            <option key={part.month} value={part.month}>
              {longMonth(part.month)}
            </option>
          ))}
        </select>
      </label>
      {shown ? <DaysTable days={daysOf(days, shown)} chart={chart} month={month} /> : null}
    </>
  );
}

const daysOf = (days: readonly PlanDay[], { first, days: length }: MonthPart): readonly PlanDay[] =>
  days.slice(first, first + length);

function Figures(props: { readonly caption: string; readonly head: readonly string[]; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
    <section className="table-scroll" aria-label={props.caption} tabIndex={0}>
      <table className="plan-table">
        <caption className="visually-hidden">{props.caption}</caption>
        <thead>
          <tr>
            {props.head.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{props.children}</tbody>
      </table>
    </section>
  );
}

function MonthRow({ part, days }: { readonly part: MonthPart; readonly days: readonly PlanDay[] }) {
  const { sittings, cards, minutes, newCards, worst } = sumUp(days);
  return (
    <tr>
      <th scope="row">{longMonth(part.month)}</th>
      <td>{sittings}</td>
      <td>{count(cards)}</td>
      <td>{count(minutes)}</td>
      <td>{count(newCards)}</td>
      <td>
        {worst
          ? `${shortDate(worst.date)}: ${count(worst.reviews.mean)} cards, ${minuteWords(worst.minutes.mean)}`
          : "nobody sits"}
      </td>
    </tr>
  );
}

function DaysTable(props: { readonly days: readonly PlanDay[]; readonly chart: Chart; readonly month: string }) {
  const head = ["Date", "Chart day", "New", "Cards", "nine in ten", "Minutes", "nine in ten "];
  return (
    <Figures caption={`The days of ${longMonth(props.month)}`} head={head}>
      {props.days.map((day) => (
        <tr key={day.date}>
          <th scope="row">{shortDate(day.date)}</th>
          <td>{day.day === null ? "none" : chartDay(props.chart, day.day)}</td>
          {day.kind === "sitting" ? (
            <>
              <td>{count(day.newCards)}</td>
              <td>{count(day.reviews.mean)}</td>
              <td>{rangeWords(day.reviews)}</td>
              <td>{count(day.minutes.mean)}</td>
              <td>{rangeWords(day.minutes)}</td>
            </>
          ) : (
            <td colSpan={5}>{day.kind === "rest" ? "rest day" : "missed"}</td>
          )}
        </tr>
      ))}
    </Figures>
  );
}

function rangeWords({ quantiles: [low, high] }: Spread): string {
  return low === undefined || high === undefined ? "" : `${count(low)} to ${count(high)}`;
}
