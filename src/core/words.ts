// How numbers and times are put into words, the same on every page and in every file.

const numbers = new Intl.NumberFormat("en-GB");

/** A number with its thousands set apart. */
export const count = (n: number): string => numbers.format(Math.round(n));

/** "1 card", "12 cards". */
export const counted = (n: number, one: string, many = `${one}s`): string =>
  `${count(n)} ${Math.round(n) === 1 ? one : many}`;

const LEAST_MINUTES = 0.75;

/** "about 25 minutes". */
export function about(minutes: number): string {
  if (minutes <= 0) return "no time at all";
  return minutes < LEAST_MINUTES ? minuteWords(minutes) : `about ${minuteWords(minutes)}`;
}

/** "25 minutes", from an hour and a half on in half hours. */
export function minuteWords(minutes: number): string {
  if (minutes < LEAST_MINUTES) return "less than a minute";
  if (minutes < 90) return counted(minutes, "minute");
  return `${Math.round(minutes / 30) / 2} hours`;
}
