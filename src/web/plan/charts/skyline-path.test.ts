import { expect, test } from "vitest";
import { skylinePath, skylineY } from "./skyline-path.ts";

test("each day is a step as wide as the next, and the most reaches the top", () => {
  expect(skylinePath([10, 20], 20)).toBe("M0 40V20H50V0H100V40Z");
});

test("days drawn to a larger scale are lower", () => {
  expect(skylinePath([10], 40)).toBe("M0 40V30H100V40Z");
  expect(skylineY(10, 40)).toBe(30);
});

test("nothing at all lies on the ground", () => {
  expect(skylinePath([0, 0], 0)).toBe("M0 40V40H50V40H100V40Z");
  expect(skylinePath([], 10)).toBe("");
});
