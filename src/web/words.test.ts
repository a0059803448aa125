import { expect, test } from "vitest";
import { longDate, pileName, placeName } from "./words.ts";

test("a date is said with its weekday, whatever the time zone of the machine", () => {
  expect(longDate("2026-11-25")).toBe("Wednesday 25 November");
});

test("a bundle is named only where there is more than one", () => {
  expect([pileName(4, 1, 1), pileName(6, 2, 4)]).toEqual(["compartment 4", "compartment 6 · bundle 2"]);
});

test("a withdrawn card says where it was", () => {
  expect(placeName({ kind: "withdrawn", from: { kind: "stock" } }, [])).toBe("withdrawn (was in the stock)");
});
