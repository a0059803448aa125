// How numbers and times are put into words, the same on every page and in every file.

const numbers = new Intl.NumberFormat("en-GB");

/** A number with its thousands set apart. */
export const count = (n: number): string => numbers.format(Math.round(n));

/** "1 card", "12 cards". */
export const counted = (n: number, one: string, many = `${one}s`): string =>
  `${count(n)} ${Math.round(n) === 1 ? one : many}`;

/** "about 25 minutes". */
export function about(minutes: number): string {
  if (minutes <= 0) return "no time at all";
  if (minutes < 0.75) return "less than a minute";
  if (minutes < 90) return `about ${counted(minutes, "minute")}`;
  const halves = Math.round(minutes / 30) / 2;
  return `about ${halves} hours`;
}
