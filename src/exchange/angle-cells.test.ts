import { describe, expect, it } from "vitest";
import type { FactContent } from "../core/facts/fact.ts";
import { NO_EXTRAS } from "../core/facts/fact.ts";
import { anglesCell, readAngles } from "./angle-cells.ts";

const pair: FactContent = { ...NO_EXTRAS, kind: "pair", prompt: "Vega", answer: "Lyra" };
const planets: FactContent = {
  ...NO_EXTRAS,
  kind: "list",
  title: "Planets by distance from the Sun",
  items: ["Mercury", "Venus", "Earth"],
  numbers: [4, 1, 7],
};
const fresh: FactContent = { ...planets, numbers: [1, 2, 3] };

describe("a cell of angles", () => {
  it("is empty for the angles of a new fact", () => {
    expect(anglesCell(pair, ["reverse", "forward"])).toBe("");
    expect(anglesCell(planets, ["next-4", "next-1", "next-7"])).toBe("");
  });

  it("names a way of asking for all parts, or the part by its place", () => {
    expect(anglesCell(pair, ["reverse"])).toBe("reverse");
    expect(anglesCell(planets, ["next-4", "next-1", "next-7", "position-1"])).toBe("next; position 2");
    expect(anglesCell(planets, ["previous-4", "previous-1"])).toBe("previous");
  });

  it("is read with blanks or hyphens, in any case, in the order of the fact", () => {
    expect(readAngles("Position 2, next", fresh)).toEqual({
      ok: true,
      value: ["next-1", "next-2", "next-3", "position-2"],
    });
    expect(readAngles("position-3\nposition-3", fresh)).toEqual({ ok: true, value: ["position-3"] });
    expect(readAngles(" ; ", fresh)).toEqual({ ok: true, value: null });
  });

  it("refuses what the fact cannot be asked from, and says what it can be", () => {
    expect(readAngles("next", pair)).toEqual({
      ok: false,
      error: "“next” is not an angle of this fact: use forward, reverse, or clear the cell",
    });
    expect(readAngles("position 4", fresh).ok).toBe(false);
    expect(readAngles("previous 3", fresh).ok).toBe(false);
  });
});
