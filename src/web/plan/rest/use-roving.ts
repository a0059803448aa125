// One day of each month is reached by Tab, the others and the weekdays above them by arrows.
import { type KeyboardEvent, type RefObject, useCallback, useState } from "react";
import { isoWeekday, type LocalDate } from "../../../core/calendar/local-date.ts";
import { keyDate } from "./month-days.ts";

/** The day that Tab leads to in each month, and what a key does; `from` is the first day that can be reached. */
export function useRoving(region: RefObject<HTMLElement | null>, from: LocalDate) {
  const [stops, setStops] = useState<ReadonlyMap<string, LocalDate>>(new Map());
  const stopOf = (month: string): LocalDate => stops.get(month) ?? (from.startsWith(month) ? from : `${month}-01`);
  const onKey = useCallback(
    (event: KeyboardEvent<HTMLElement>) => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      const target = keyTarget(event, region.current);
      if (target === null) return;
      event.preventDefault();
      target?.focus();
      const date = target?.dataset.date;
      if (date) setStops((all) => new Map(all).set(date.slice(0, 7), date));
    },
    [region],
  );
  return { stopOf, onKey };
}

/** The button that a key leads to; undefined where there is none that way, null if the key means nothing here. */
function keyTarget(event: KeyboardEvent<HTMLElement>, region: HTMLElement | null): HTMLElement | undefined | null {
  const { date, weekday } = (event.target as HTMLElement).dataset;
  const month = event.currentTarget;
  if (date === undefined) return fromHeading(event.key, Number(weekday), month);
  const next = keyDate(event.key, date);
  if (next === null) return null;
  const above = event.key === "ArrowUp" && next.slice(0, 7) !== date.slice(0, 7);
  const day = above ? undefined : find(region, `[data-date="${next}"]`);
  return day ?? (event.key === "ArrowUp" ? find(month, `[data-weekday="${isoWeekday(date)}"]`) : undefined);
}

function fromHeading(key: string, weekday: number, month: HTMLElement): HTMLElement | undefined | null {
  switch (key) {
    case "ArrowDown":
      return [...month.querySelectorAll<HTMLElement>("[data-date]")].find(
        ({ dataset }) => isoWeekday(dataset.date ?? "") === weekday,
      );
    case "ArrowLeft":
      return find(month, `[data-weekday="${weekday - 1}"]`);
    case "ArrowRight":
      return find(month, `[data-weekday="${weekday + 1}"]`);
    default:
      return null;
  }
}

const find = (where: HTMLElement | null, selector: string): HTMLElement | undefined =>
  where?.querySelector<HTMLElement>(selector) ?? undefined;
