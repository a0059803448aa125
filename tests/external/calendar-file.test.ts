// Our calendar files against RFC 5545 (B. Desruisseaux, "Internet Calendaring and Scheduling Core Object
// Specification (iCalendar)", September 2009) and RFC 7986 (C. Daboo, "New Properties for iCalendar", October 2016),
// rule by rule, and read back by ical.js 2.2.1, an independent parser.
import fc from "fast-check";
import ICAL from "ical.js";
import { afterEach, describe, expect, it, vi } from "vitest";
import { type CalendarPlan, daysToCome } from "../../src/app/calendar-days.ts";
import { addDays, isoWeekday, type LocalDate } from "../../src/core/calendar/local-date.ts";
import { type Chart, visitsOn } from "../../src/core/chart/chart.ts";
import { LEVELLED_CHART } from "../../src/core/chart/make-chart.ts";
import { cleanText } from "../../src/core/facts/clean-text.ts";
import { calendarFile } from "../../src/exchange/calendar-file.ts";
import { anyChart } from "../support/any-chart.ts";

const STAMP = Date.parse("2026-03-14T20:00:05Z");
const PACE = { recalled: 8, missed: 20, fresh: 45 };

/** Over the change to summer time in Europe, 29 March 2026; Sundays are rest days. */
const START = "2026-03-14";
const SUNDAY = [7];

const planOf = (chart: Chart, start: LocalDate, restWeekdays: readonly number[], count = 64): CalendarPlan => {
  const recall = chart.compartments.map(() => 0.9);
  const days = daysToCome({ chart, start, restWeekdays, restDates: [], newPerDay: 10, recall, pace: PACE }, count);
  return { id: "the guide's box", chart, days };
};

const PLAN = planOf(LEVELLED_CHART, START, SUNDAY);
const TEXT = calendarFile(PLAN, { stamp: STAMP });

interface ReadEvent {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly date: LocalDate;
  readonly component: ICAL.Component;
}

const calendarOf = (text: string): ICAL.Component => new ICAL.Component(ICAL.parse(text));

/** The events of a file as ical.js reads them. */
const eventsOf = (text: string): readonly ReadEvent[] =>
  calendarOf(text)
    .getAllSubcomponents("vevent")
    .map((component) => {
      const { uid, summary, description, startDate } = new ICAL.Event(component);
      return { uid, summary, description, date: startDate.toString(), component };
    });

const octets = (line: string): number => new TextEncoder().encode(line).length;

/** How often a property stands in a component: the RFC allows most of them once. */
const times = (component: ICAL.Component, name: string): number => component.getAllProperties(name).length;

describe("RFC 5545", () => {
  it("3.1: Lines of text SHOULD NOT be longer than 75 octets, excluding the line break; delimited by CRLF.", () => {
    const title = "Guides’ box: Vega, Deneb & Altair — Σείριος, ほうおう座, 🔭🔭🔭🔭🔭🔭🔭🔭🔭🔭🔭🔭";
    const text = calendarFile(PLAN, { stamp: STAMP, title });
    const lines = text.split("\r\n");
    expect(lines.pop()).toBe("");
    expect(lines.join("")).not.toMatch(/[\r\n]/);
    expect(Math.max(...lines.map(octets))).toBeLessThanOrEqual(75);
    // Some lines had to be folded for that, and come out whole.
    expect(lines.filter((line) => line.startsWith(" ")).length).toBeGreaterThan(PLAN.days.length);
    expect(eventsOf(text)[0]?.summary).toBe(`${title}: chart day 1, about 8 minutes`);
  });

  it("3.1.4: There is no charset parameter; the default is UTF-8, and no byte order mark stands before the text.", () => {
    expect(TEXT.startsWith("BEGIN:VCALENDAR\r\n")).toBe(true);
    expect(TEXT).not.toContain("CHARSET");
  });

  it("3.3.11: BACKSLASH, COMMA and SEMICOLON MUST be escaped in TEXT; a line break is written as \\n.", () => {
    const title = "Night sky; a guide’s box, \\ north \\n of the hill: “Déneb”";
    const text = calendarFile(PLAN, { stamp: STAMP, title });
    const unfolded = text.replaceAll("\r\n ", "");
    expect(unfolded).toContain(
      "SUMMARY:Night sky\\; a guide’s box\\, \\\\ north \\\\n of the hill: “Déneb”: chart day 1\\, about 8 minutes\r\n",
    );
    const [first] = eventsOf(text);
    expect(first?.summary).toBe(`${title}: chart day 1, about 8 minutes`);
    expect(first?.description).toBe("Compartments to visit: 2, then 1\nNo cards due, 10 new");
  });

  it("3.3.11: control characters other than HTAB MUST NOT be in TEXT", () => {
    const text = calendarFile(PLAN, { stamp: STAMP, title: "The\u0000night\u0007\u007f sky\u009f" });
    expect(text.replaceAll("\r\n", "")).not.toMatch(/\p{Cc}/u);
    expect(calendarOf(text).getFirstPropertyValue("x-wr-calname")).toBe("Thenight sky");
  });

  it("3.6: PRODID and VERSION are REQUIRED, METHOD and CALSCALE MUST NOT occur more than once", () => {
    const calendar = calendarOf(TEXT);
    expect([times(calendar, "prodid"), times(calendar, "version")]).toEqual([1, 1]);
    expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
    // 3.7.3: a formal public identifier (ISO 9070), "-//" for an owner that is not registered.
    expect(calendar.getFirstPropertyValue("prodid")).toBe("-//Longhold//Longhold//EN");
    expect(times(calendar, "method")).toBe(1);
    expect(calendar.getFirstPropertyValue("method")).toBe("PUBLISH");
    expect(times(calendar, "calscale")).toBeLessThanOrEqual(1);
  });

  it("3.6: There MUST be at least one calendar component, also where all dates are rest days", () => {
    // 15 March 2026 is a Sunday.
    const events = eventsOf(calendarFile(planOf(LEVELLED_CHART, "2026-03-15", SUNDAY, 1), { stamp: STAMP }));
    expect(events.map(({ date, summary }) => [date, summary])).toEqual([["2026-03-15", "Longhold: rest day"]]);
  });

  it("3.6.1: UID and DTSTAMP are REQUIRED once; DTSTART as a DATE without an end is an event of that one day", () => {
    for (const { component } of eventsOf(TEXT)) {
      for (const name of ["uid", "dtstamp", "dtstart", "summary", "description", "transp"])
        expect([name, times(component, name)]).toEqual([name, 1]);
      const start = component.getFirstProperty("dtstart");
      expect(start?.getParameter("value") ?? start?.type).toMatch(/^date$/i);
      const event = new ICAL.Event(component);
      expect(event.startDate.isDate).toBe(true);
      expect(event.endDate.toString()).toBe(addDays(event.startDate.toString(), 1));
      expect(event.isRecurring()).toBe(false);
    }
  });

  it("3.8.2.7: TRANSP of TRANSPARENT does not take up time on a calendar", () => {
    const said = eventsOf(TEXT).map(({ component }) => component.getFirstPropertyValue("transp"));
    expect(new Set(said)).toEqual(new Set(["TRANSPARENT"]));
  });

  it("3.8.4.7: UID MUST be globally unique, so no two dates share one, and a date keeps its own", () => {
    const uids = eventsOf(TEXT).map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(uids.length);
    const other = eventsOf(calendarFile({ ...PLAN, id: "another box" }, { stamp: STAMP }));
    expect(other.filter(({ uid }) => uids.includes(uid))).toEqual([]);
    const nextWeek = { ...PLAN, days: PLAN.days.slice(7) };
    expect(eventsOf(calendarFile(nextWeek, { stamp: STAMP + 1 })).map(({ uid }) => uid)).toEqual(uids.slice(6));
  });

  it("3.8.7.2: DTSTAMP MUST be specified in the UTC time format", () => {
    const stamps = eventsOf(TEXT).map(({ component }) => String(component.getFirstPropertyValue("dtstamp")));
    expect(new Set(stamps)).toEqual(new Set(["2026-03-14T20:00:05Z"]));
  });
});

describe("RFC 7986", () => {
  it("5.1: NAME is TEXT, so what is special in it is escaped; 3.8.8.2 of RFC 5545: so is X-WR-CALNAME", () => {
    const text = calendarFile(PLAN, { stamp: STAMP, title: "Hill, dome; sky" });
    expect(text).toContain("\r\nNAME:Hill\\, dome\\; sky\r\nX-WR-CALNAME:Hill\\, dome\\; sky\r\n");
  });

  it("5.7: REFRESH-INTERVAL is a positive DURATION", () => {
    expect(TEXT).toMatch(/\r\nREFRESH-INTERVAL;VALUE=DURATION:PT6H\r\n/);
    const [property] = calendarOf(TEXT).getAllProperties("refresh-interval");
    expect(ICAL.Duration.fromString(String(property?.getFirstValue())).toSeconds()).toBe(6 * 3_600);
  });
});

/** The visits that a description names, "7 bundle 3, then 2, then 1". */
function visitsNamed(description: string): readonly { compartment: number; bundle: number }[] {
  const named = /^Compartments to visit: (.*)$/m.exec(description)?.[1];
  if (named === undefined) return [];
  return named.split(", then ").map((pile) => {
    const [compartment, bundle = "1"] = pile.split(" bundle ");
    return { compartment: Number(compartment), bundle: Number(bundle) };
  });
}

describe("ical.js 2.2.1", () => {
  afterEach(() => {
    vi.unstubAllEnvs();
  });

  // 29 March and 25 October 2026: clocks change in Europe; 8 March and 1 November in North America (IANA time zone
  // database, rules EU, US and Canada). A date is a date wherever the program runs.
  it.each(["UTC", "Europe/Lisbon", "America/St_Johns", "Pacific/Apia", "Pacific/Pago_Pago"])(
    "reads every practice day of a year on its own date, on a machine in %s",
    (zone) => {
      vi.stubEnv("TZ", zone);
      expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(zone);
      expect(new Date(STAMP).getTimezoneOffset() === 0).toBe(zone === "UTC" || zone === "Europe/Lisbon");
      const plan = planOf(LEVELLED_CHART, "2026-03-01", SUNDAY, 365);
      const dates = eventsOf(calendarFile(plan, { stamp: STAMP })).map(({ date }) => date);
      const expected = Array.from({ length: 365 }, (_, i) => addDays("2026-03-01", i)).filter(
        (date) => isoWeekday(date) !== 7,
      );
      expect(dates).toEqual(expected);
    },
  );

  it("reads on every date the visits that the chart names for its box day, and nothing on rest days", () => {
    const rests = fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { maxLength: 6 });
    fc.assert(
      fc.property(anyChart, rests, fc.nat(4000), (chart, restWeekdays, later) => {
        const start = addDays("2024-01-01", later);
        const read = new Map(
          eventsOf(calendarFile(planOf(chart, start, restWeekdays, 40), { stamp: STAMP })).map((one) => [
            one.date,
            one,
          ]),
        );
        let boxDay = 0;
        for (let i = 0; i < 40; i++) {
          const date = addDays(start, i);
          const event = read.get(date);
          expect(event !== undefined).toBe(!restWeekdays.includes(isoWeekday(date)));
          if (event) expect(visitsNamed(event.description)).toEqual(visitsOn(chart, ++boxDay));
        }
      }),
      { numRuns: 50 },
    );
  });

  it("reads any title as it was given, tidied as all text is, in lines of at most 75 octets", () => {
    const title = fc.string({
      unit: fc.oneof(fc.constantFrom(",", ";", "\\", ":", '"', "\n", "n", " ", "🔭", "é"), fc.constant("x")),
      minLength: 1,
      maxLength: 120,
    });
    fc.assert(
      fc.property(fc.oneof(title, fc.string({ unit: "grapheme", maxLength: 80 })), (given) => {
        const text = calendarFile({ ...PLAN, days: PLAN.days.slice(0, 1) }, { stamp: STAMP, title: given });
        expect(eventsOf(text)[0]?.summary).toBe(`${cleanText(given)}: chart day 1, about 8 minutes`);
        expect(Math.max(...text.split("\r\n").map(octets))).toBeLessThanOrEqual(75);
      }),
      { numRuns: 500 },
    );
  });
});
