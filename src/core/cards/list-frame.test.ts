import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { listFrame } from "./list-frame.ts";

const PLANETS = ["Mercury", "Venus", "Earth", "Mars"];
const asked = (items: readonly string[], at: number, way: "next" | "previous" | "position"): string => {
  const { before, after } = listFrame(items, at, way);
  return `${before}?${after}`;
};

describe("an item of a list is asked", () => {
  it("with the one that it follows; the first by its place", () => {
    expect(PLANETS.map((_, at) => asked(PLANETS, at, "next"))).toEqual([
      "1. ?",
      "Mercury\n?",
      "… Venus\n?",
      "… Earth\n?",
    ]);
  });

  it("with the one that it precedes", () => {
    expect(asked(PLANETS, 0, "previous")).toBe("?\nVenus …");
    expect(asked(PLANETS, 2, "previous")).toBe("?\nMars");
  });

  it("by its place among all", () => {
    expect(asked(PLANETS, 2, "position")).toBe("3 / 4\n?");
  });

  it("with as many neighbours as tell it from others, where a line comes more than once", () => {
    const verse = ["Row", "row", "row", "your boat", "row", "gently"];
    expect(asked(verse, 4, "next")).toBe("… your boat\n?");
    expect(asked(verse, 5, "next")).toBe("… your boat\nrow\n?");
    expect(asked(verse, 3, "next")).toBe("… row\nrow\n?");
    expect(asked(verse, 0, "previous")).toBe("?\nrow\nrow …");
  });

  it("so that no two items of one list are asked alike", () => {
    const list = fc.array(fc.constantFrom("a", "b", "c"), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(list, fc.constantFrom("next" as const, "position" as const), (items, way) => {
        expect(new Set(items.map((_, at) => asked(items, at, way))).size).toBe(items.length);
      }),
    );
    fc.assert(
      fc.property(list, (items) => {
        const some = items.slice(0, -1);
        expect(new Set(some.map((_, at) => asked(items, at, "previous"))).size).toBe(some.length);
      }),
    );
  });
});
