import fc from "fast-check";
import { expect, it } from "vitest";
import { disarmCell, readDisarmed } from "./formula-cells.ts";

it.each(["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", '=HYPERLINK("http://example.org")', "＝1", "\t=1"])(
  "%s is written as text",
  (cell) => expect(disarmCell(cell)).toBe(`'${cell}`),
);

it.each(["Vega", "-1.46", "+5", "-1e3", "a=b", "'tis", "", "31"])("%s is written as it is", (cell) =>
  expect(disarmCell(cell)).toBe(cell),
);

it("every cell is read as it was, and none begins a formula", () => {
  const cell = fc.string({ unit: fc.constantFrom("'", "=", "-", "+", "@", "1", ".", "a", "\t") });
  fc.assert(
    fc.property(cell, (text) => {
      const written = disarmCell(text);
      expect(readDisarmed(written)).toBe(text);
      expect(written).not.toMatch(/^[=@\t]|^[+-](?!\d[\d.,]*(e[+-]?\d+)?$)/iu);
    }),
  );
});
