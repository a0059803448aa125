import { describe, expect, it } from "vitest";
import type { DatedDay } from "./dated-days.ts";
import { introductions } from "./new-cards.ts";

// 2026-03-14 is a Saturday.
const days: readonly DatedDay[] = [
  { date: "2026-03-14", kind: "sitting", day: 1 },
  { date: "2026-03-15", kind: "rest", day: null },
  { date: "2026-03-16", kind: "sitting", day: 2 },
  { date: "2026-03-17", kind: "missed", day: 3 },
  { date: "2026-03-18", kind: "sitting", day: 4 },
  { date: "2026-03-19", kind: "sitting", day: 5 },
];

describe("the introductions of new cards", () => {
  it("are as many at every sitting, and none between sittings", () => {
    expect(introductions({ kind: "steady", each: 5 }, days, null)).toEqual([5, 0, 5, 0, 5, 5]);
  });

  it("end after the last date", () => {
    expect(introductions({ kind: "steady", each: 5, until: "2026-03-18" }, days, null)).toEqual([5, 0, 5, 0, 5, 0]);
    const byWeekday = { kind: "weekdays", each: [1, 2, 3, 4, 5, 6, 7], until: "2026-03-16" } as const;
    expect(introductions(byWeekday, days, null)).toEqual([6, 0, 1, 0, 0, 0]);
  });

  it("follow the weekday, Monday first", () => {
    expect(introductions({ kind: "weekdays", each: [1, 2, 3, 4, 5, 6, 7] }, days, null)).toEqual([6, 0, 1, 0, 3, 4]);
  });

  it("follow a list from sitting to sitting", () => {
    expect(introductions({ kind: "list", each: [9, 8, 7] }, days, null)).toEqual([9, 0, 8, 0, 7, 0]);
  });

  it("end with the stock", () => {
    expect(introductions({ kind: "steady", each: 5 }, days, 12)).toEqual([5, 0, 5, 0, 2, 0]);
    expect(introductions({ kind: "steady", each: 5 }, days, 0)).toEqual([0, 0, 0, 0, 0, 0]);
  });
});
