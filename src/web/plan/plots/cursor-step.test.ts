import { expect, test } from "vitest";
import { cursorStep } from "./cursor-step.ts";

const ROW = { count: 100, leap: (at: number, direction: 1 | -1) => at + 30 * direction };

test("arrows step, Home and End go to the ends, pages leap", () => {
  const steps = ["ArrowRight", "ArrowLeft", "Home", "End", "PageUp", "PageDown"].map((key) => cursorStep(key, 50, ROW));
  expect(steps).toEqual([51, 49, 0, 99, 80, 20]);
});

test("the cursor stays on the plot", () => {
  expect(cursorStep("ArrowLeft", 0, ROW)).toBe(0);
  expect(cursorStep("PageUp", 90, ROW)).toBe(99);
});

test("other keys are left to the page", () => {
  expect(cursorStep("Tab", 50, ROW)).toBeNull();
});
