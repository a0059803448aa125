import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addDays,
  dateToDayNumber,
  dayNumberToDate,
  daysBetween,
  isLocalDate,
  isoWeekday,
  isTimeZone,
  lastInstantOf,
  localDateAt,
} from "./local-date.ts";

const HOUR = 3_600_000;

/**
 * Stretches of time in which a zone kept one offset from UTC (IANA time zone database): the hours round
 * each clock change named here. The date is then plain arithmetic, without asking the platform.
 */
const STRETCHES: readonly { zone: string; offset: number; from: string; hours: number }[] = [
  { zone: "Europe/Lisbon", offset: 0, from: "2026-03-28T01:00Z", hours: 24 },
  { zone: "Europe/Lisbon", offset: 1, from: "2026-03-29T01:00Z", hours: 48 },
  { zone: "Europe/Lisbon", offset: 1, from: "2026-10-24T01:00Z", hours: 24 },
  { zone: "Europe/Lisbon", offset: 0, from: "2026-10-25T01:00Z", hours: 48 },
  { zone: "America/St_Johns", offset: -3.5, from: "2026-03-07T05:30Z", hours: 24 },
  { zone: "America/St_Johns", offset: -2.5, from: "2026-03-08T05:30Z", hours: 48 },
  { zone: "America/St_Johns", offset: -2.5, from: "2026-10-31T04:30Z", hours: 24 },
  { zone: "America/St_Johns", offset: -3.5, from: "2026-11-01T04:30Z", hours: 48 },
  { zone: "Australia/Lord_Howe", offset: 11, from: "2026-04-03T15:00Z", hours: 24 },
  { zone: "Australia/Lord_Howe", offset: 10.5, from: "2026-04-04T15:00Z", hours: 48 },
  { zone: "Asia/Kathmandu", offset: 5.75, from: "2026-06-01T00:00Z", hours: 72 },
  { zone: "Pacific/Apia", offset: 13, from: "2026-06-01T00:00Z", hours: 72 },
  { zone: "Pacific/Kiritimati", offset: 14, from: "2026-12-30T00:00Z", hours: 72 },
];

describe("the date of an instant", () => {
  it.each(STRETCHES)("is the wall clock's date, set back by the roll-over hour: $zone from $from", (stretch) => {
    const start = Date.parse(stretch.from);
    for (let minutes = 0; minutes < stretch.hours * 60; minutes += 15) {
      const instant = start + minutes * 60_000;
      for (const rollOver of [0, 1, 3, 4, 12, 23]) {
        const shifted = new Date(instant + (stretch.offset - rollOver) * HOUR).toISOString().slice(0, 10);
        expect(localDateAt(instant, stretch.zone, rollOver)).toBe(shifted);
      }
    }
  });

  it("still is the day before at 03:59 and the new day at 04:00", () => {
    expect(localDateAt(Date.parse("2026-03-15T03:59:59Z"), "Europe/Lisbon", 4)).toBe("2026-03-14");
    expect(localDateAt(Date.parse("2026-03-15T04:00:00Z"), "Europe/Lisbon", 4)).toBe("2026-03-15");
  });

  // Samoa went over the date line at the end of Thursday 29 December 2011: Friday the 30th was left out.
  it("goes from Thursday to Saturday where a country crossed the date line", () => {
    const midnight = Date.parse("2011-12-30T10:00:00Z");
    expect(localDateAt(midnight - 1, "Pacific/Apia", 0)).toBe("2011-12-29");
    expect(localDateAt(midnight, "Pacific/Apia", 0)).toBe("2011-12-31");
  });

  it("never goes back as time goes on, with a roll-over hour that no clock change touches", () => {
    const zone = fc.constantFrom("Europe/Lisbon", "America/St_Johns", "Pacific/Apia", "Asia/Kathmandu", "Africa/Cairo");
    const instant = fc.integer({ min: Date.parse("2012-01-01T00:00Z"), max: Date.parse("2035-01-01T00:00Z") });
    fc.assert(
      fc.property(
        zone,
        instant,
        fc.integer({ min: 0, max: 3 * 24 * HOUR }),
        fc.integer({ min: 4, max: 20 }),
        (at, t, later, hour) => {
          expect(localDateAt(t, at, hour) <= localDateAt(t + later, at, hour)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("a date", () => {
  const anyDate = fc.integer({ min: -200_000, max: 200_000 }).map(dayNumberToDate);

  it("becomes a day number and the same date again", () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(dayNumberToDate(dateToDayNumber(date))).toBe(date);
      }),
    );
  });

  it("is as many days away as were added to it", () => {
    fc.assert(
      fc.property(anyDate, fc.integer({ min: -2000, max: 2000 }), (date, days) => {
        expect(daysBetween(date, addDays(date, days))).toBe(days);
      }),
    );
  });

  it("follows 28 February with the 29th in leap years only", () => {
    expect(["1900", "2000", "2024", "2026"].map((year) => addDays(`${year}-02-28`, 1))).toEqual([
      "1900-03-01",
      "2000-02-29",
      "2024-02-29",
      "2026-03-01",
    ]);
  });

  it("has the weekday that the calendar on the wall shows", () => {
    // 1 January 1970 was a Thursday; 14 March 2026 is a Saturday; 31 December 1969 a Wednesday.
    expect(["1970-01-01", "2026-03-14", "1969-12-31", "2026-03-15", "2026-03-16"].map(isoWeekday)).toEqual([
      4, 6, 3, 7, 1,
    ]);
  });

  it.each(["2026-03-14", "2024-02-29", "1969-12-31"])("is recognised: %s", (text) => {
    expect(isLocalDate(text)).toBe(true);
  });

  it.each(["2026-02-29", "2026-04-31", "2026-13-01", "2026-00-10", "2026-3-14", "14.03.2026", "", "2026-03-14T00:00"])(
    "is not: %s",
    (text) => {
      expect(isLocalDate(text)).toBe(false);
    },
  );
});

describe("a time zone", () => {
  it("is known by its IANA name only", () => {
    expect(["Europe/Lisbon", "Asia/Kathmandu", "UTC"].map(isTimeZone)).toEqual([true, true, true]);
    expect(["Europe/Atlantis", "", "the hill"].map(isTimeZone)).toEqual([false, false, false]);
  });
});

describe("the last instant of a date", () => {
  it.each([
    ["2026-03-14", "Europe/Lisbon", 4, "2026-03-15T03:59:59.999Z"],
    ["2026-03-28", "Europe/Lisbon", 4, "2026-03-29T02:59:59.999Z"],
    ["2026-10-24", "Europe/Lisbon", 4, "2026-10-25T03:59:59.999Z"],
    ["2026-06-01", "Pacific/Kiritimati", 0, "2026-06-01T09:59:59.999Z"],
    ["2026-06-01", "Pacific/Pago_Pago", 23, "2026-06-03T09:59:59.999Z"],
  ])("%s in %s with a day that begins at %i is %s", (date, zone, hour, last) => {
    expect(new Date(lastInstantOf(date, zone, hour)).toISOString()).toBe(last);
  });

  it("belongs to the date, and the next one does not", () => {
    const zone = fc.constantFrom("Europe/Lisbon", "America/St_Johns", "Australia/Lord_Howe", "Asia/Kathmandu");
    // Before 3 in the morning clocks go back, and the last instant of a date can come twice.
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30_000 }), zone, fc.integer({ min: 3, max: 23 }), (day, name, hour) => {
        const date = dayNumberToDate(day);
        const last = lastInstantOf(date, name, hour);
        expect(localDateAt(last, name, hour)).toBe(date);
        expect(localDateAt(last + 1, name, hour) > date).toBe(true);
      }),
    );
  });
});
