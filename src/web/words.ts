// How numbers, dates and parts of the trade are put into words, the same on every page.
import type { Place } from "../core/box/placement.ts";
import type { LocalDate } from "../core/calendar/local-date.ts";
import type { Angle, PartAngle } from "../core/facts/fact.ts";

export { about, count, counted, minuteWords } from "../core/words.ts";

const LOCALE = "en-GB";
const longDates = new Intl.DateTimeFormat(LOCALE, { weekday: "long", day: "numeric", month: "long", timeZone: "UTC" });
const shortDates = new Intl.DateTimeFormat(LOCALE, {
  weekday: "short",
  day: "numeric",
  month: "short",
  timeZone: "UTC",
});
const yearDates = new Intl.DateTimeFormat(LOCALE, { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

const instant = (date: LocalDate): number => Date.parse(`${date}T00:00:00Z`);

/** Wednesday 25 November. */
export const longDate = (date: LocalDate): string => longDates.format(instant(date)).replace(",", "");
/** Wednesday 25 November 2026, for a day that can lie more than some months away. */
export const fullDate = (date: LocalDate): string => `${longDate(date)} ${date.slice(0, 4)}`;
/** Wed 25 Nov. */
export const shortDate = (date: LocalDate): string => shortDates.format(instant(date)).replace(",", "");
/** 25 November 2026. */
export const yearDate = (date: LocalDate): string => yearDates.format(instant(date));

/** Day and time of an instant in a time zone. */
export const instantIn = (at: number, timeZone: string): string =>
  new Intl.DateTimeFormat(LOCALE, {
    day: "numeric",
    month: "short",
    year: "numeric",
    hour: "2-digit",
    minute: "2-digit",
    timeZone,
  })
    .format(at)
    .replace(",", "");

/** The date of an instant in a time zone: 25 November 2026. */
export const yearDateOf = (at: number, timeZone: string): string =>
  new Intl.DateTimeFormat(LOCALE, { day: "numeric", month: "long", year: "numeric", timeZone }).format(at);

/** "1 Monday" as a name. */
export const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

/** An angle in words. */
export function angleName(angle: Angle): string {
  const part = /^(gap|next|previous|position|label)-(\d+)$/u.exec(angle);
  if (part) return `${PARTS[part[1] as PartAngle]} ${part[2]}`;
  return WHOLE[angle as keyof typeof WHOLE];
}

const WHOLE = {
  forward: "Prompt to answer",
  reverse: "Answer to prompt",
  "picture-to-name": "Picture to name",
  "name-to-picture": "Name to picture",
  "name-to-formula": "Name to formula",
  "formula-to-name": "Formula to name",
  spelling: "To be spelt",
  "sound-to-name": "Sound to name",
  "name-to-sound": "Name to sound",
} as const;

const PARTS: Readonly<Record<PartAngle, string>> = {
  gap: "Gap",
  next: "What comes next: item",
  previous: "What comes before: item",
  position: "Place in the list: item",
  label: "Label",
};

/** "compartment 4 · bundle 2"; the bundle is left out where a compartment has only one. */
export const pileName = (compartment: number, bundle: number, bundles: number): string =>
  bundles > 1 ? `compartment ${compartment} · bundle ${bundle}` : `compartment ${compartment}`;

/** A card's place in words; `bundles` says how many bundles each compartment has. */
export function placeName(place: Place | null, bundles: readonly number[]): string {
  if (!place) return "in no box";
  switch (place.kind) {
    case "stock":
      return "in the stock";
    case "kept":
      return "kept";
    case "compartment":
      return `in ${pileName(place.compartment, place.bundle, bundles[place.compartment - 1] ?? 1)}`;
    case "withdrawn":
      return `withdrawn (was ${placeName(place.from, bundles)})`;
  }
}

/** A text with a capital first letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
