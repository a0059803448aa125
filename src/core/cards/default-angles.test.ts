import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyContent, asFact } from "../../../tests/support/any-fact.ts";
import { isAngle } from "../facts/angle-name.ts";
import type { Angle, Fact } from "../facts/fact.ts";
import { NO_EXTRAS } from "../facts/fact.ts";
import { possibleAngles } from "./cards.ts";
import { anglesAfter, defaultAngles, FIRST_ANGLES } from "./default-angles.ts";

const planets = (items: readonly string[], numbers: readonly number[], angles: readonly Angle[]): Fact => ({
  ...NO_EXTRAS,
  ...{ kind: "list", title: "Planets", items, numbers, angles, id: "f", subject: "s" },
});
const word = fc.constantFrom("Vega", "Lyra");
const any = anyContent(
  { text: word, filled: word, line: word, statement: fc.constant("[a] and [b]"), tag: word, picture: "0".repeat(64) },
  () => [1, 2],
);

describe("the angles of a new fact", () => {
  it("of a list are those from item to item, and no others", () => {
    expect(defaultAngles(planets(["a", "b"], [1, 2], []))).toEqual(["next-1", "next-2"]);
  });

  it("are some for every kind, all possible, and have names that are read again", () => {
    expect(Object.values(FIRST_ANGLES).every((families) => families.length > 0)).toBe(true);
    fc.assert(
      fc.property(any, (content) => {
        const possible = possibleAngles(content);
        const first = defaultAngles(content);
        expect(first.length).toBeGreaterThan(0);
        expect(first.filter((angle) => !possible.includes(angle))).toEqual([]);
        expect(possible.filter((angle) => !isAngle(angle))).toEqual([]);
        expect(new Set(possible).size).toBe(possible.length);
      }),
    );
  });
});

describe("the angles of a fact that was reworded", () => {
  it("stay what they were while its parts stay", () => {
    fc.assert(
      fc.property(any, fc.nat(), (content, seed) => {
        const fact = asFact(content, "f", "s");
        const some = fact.angles.filter((_, i) => (seed >> i) % 2 === 0);
        expect(anglesAfter({ ...fact, angles: some }, content)).toEqual(some);
      }),
    );
  });

  it("are asked of a new item in the ways in which the others are asked", () => {
    const before = planets(["a", "b"], [1, 2], ["next-1", "next-2", "position-1"]);
    expect(anglesAfter(before, planets(["a", "b", "c"], [1, 2, 3], []))).toEqual([
      "next-1",
      "next-2",
      "next-3",
      "position-1",
      "position-3",
    ]);
  });

  it("are those of a new fact if it has become one of another kind", () => {
    const pair = { ...NO_EXTRAS, kind: "pair", prompt: "a", answer: "b" } as const;
    expect(anglesAfter(planets(["a", "b"], [1, 2], ["next-1"]), pair)).toEqual(["forward", "reverse"]);
  });
});
