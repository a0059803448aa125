// Names of months, from their number as in 2026-11.

const names = (style: "short" | "long") => new Intl.DateTimeFormat("en-GB", { month: style, timeZone: "UTC" });
const shortNames = names("short");
const longNames = names("long");

const instant = (month: string): number => Date.parse(`${month}-01T00:00:00Z`);

/** "Nov". */
export const monthName = (month: string): string => shortNames.format(instant(month));
/** "2026". */
export const yearOf = (month: string): string => month.slice(0, 4);
/** "November 2026". */
export const longMonth = (month: string): string => `${longNames.format(instant(month))} ${yearOf(month)}`;
