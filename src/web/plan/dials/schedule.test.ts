import { expect, test } from "vitest";
import { byWeekday, eachDay, eachWeekday, lastDateOf, scheduleWords, steadily, typedList, until } from "./schedule.ts";

const STEADY = { kind: "steady", each: 12 } as const;
const WEEK = [10, 10, 10, 10, 10, 3, 0];

test("a last date stays when the pace is changed, and goes when it is taken away", () => {
  const ended = until(STEADY, "2027-03-03");
  expect(steadily(ended, 5)).toEqual({ kind: "steady", each: 5, until: "2027-03-03" });
  expect(byWeekday(ended, WEEK)).toEqual({ kind: "weekdays", each: WEEK, until: "2027-03-03" });
  expect(until(byWeekday(ended, WEEK), null)).toEqual({ kind: "weekdays", each: WEEK });
  expect(lastDateOf(ended)).toBe("2027-03-03");
});

test("one number a day becomes seven, and seven become their mean", () => {
  expect(eachWeekday(STEADY)).toEqual([12, 12, 12, 12, 12, 12, 12]);
  expect(eachDay(byWeekday(STEADY, WEEK))).toBe(8);
});

test("a list counts by its first number and has no last date", () => {
  const list = { kind: "list", each: [4, 4, 2] } as const;
  expect(eachDay(list)).toBe(4);
  expect(until(list, "2027-03-03")).toEqual({ kind: "steady", each: 4, until: "2027-03-03" });
});

test("a schedule is said in words", () => {
  expect(scheduleWords(until(STEADY, "2027-03-03"))).toBe("12 new cards a day until 3 March 2027");
  expect(scheduleWords(steadily(STEADY, 1))).toBe("1 new card a day");
  expect(scheduleWords(byWeekday(STEADY, WEEK))).toBe("about 8 new cards a day, by weekday");
});

test("a list is read as it is typed, or not at all", () => {
  expect(typedList("20, 20;15\n0")).toEqual({ kind: "list", each: [20, 20, 15, 0] });
  for (const text of ["", " , ", "20, many", "1.5", "-3", "1001", Array(367).fill("1").join(" ")])
    expect(typedList(text)).toBeNull();
  expect(scheduleWords({ kind: "list", each: [20, 20, 15] })).toBe(
    "55 new cards on the next 3 practice days, day by day",
  );
});
