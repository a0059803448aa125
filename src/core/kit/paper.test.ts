import { describe, expect, it } from "vitest";
import { parseSheetSize } from "./paper.ts";

describe("the size of a sheet", () => {
  it.each([
    ["a4", { width: 210, height: 297 }],
    ["A4", { width: 210, height: 297 }],
    ["Letter", { width: 215.9, height: 279.4 }],
    ["250x200mm", { width: 200, height: 250 }],
    ["11 x 17 in", { width: 279.4, height: 431.8 }],
  ])("%s is read upright, in millimetres", (text, size) => {
    const parsed = parseSheetSize(text);
    expect(parsed.ok && parsed.value.width).toBeCloseTo(size.width, 9);
    expect(parsed.ok && parsed.value.height).toBeCloseTo(size.height, 9);
  });

  it.each(["a5", "", "210", "50x80mm", "100x2000mm", "x", "-210x297mm"])("%j is refused", (text) => {
    expect(parseSheetSize(text).ok).toBe(false);
  });
});
