import { expect, test } from "vitest";
import { measuredWords } from "./recall-dial.tsx";

test("what a box has measured is said with the number of visits and the span of its compartments", () => {
  const visits = [
    { compartment: 1, recalled: 900, missed: 100 },
    { compartment: 2, recalled: 200, missed: 10 },
  ];
  expect(measuredWords(visits, [0.9, 0.951])).toBe(
    "As your box has measured in 1,210 visits: 90 to 95, by compartment.",
  );
  expect(measuredWords(visits, [0.9, 0.9])).toMatch(/90 in each compartment/);
});

test("without a visit it is said that nothing is measured", () => {
  expect(measuredWords([], [0.9])).toMatch(/^Nothing is measured yet/);
});
