import { describe, expect, it } from "vitest";
import { CONSTELLATIONS, constellationOf, FIGURES, NAMED_STARS } from "./sky-tables.ts";
import { meanDirection, separation } from "./stereographic.ts";

/** Centres are rounded to whole degrees: half a degree either way in both coordinates. */
const ROUNDING_DEGREES = 0.72;

describe("the sky tables", () => {
  it("hold 88 constellations with every cell filled", () => {
    expect(CONSTELLATIONS).toHaveLength(88);
    for (const { abbreviation, name, genitive, english, letter, ra, dec } of CONSTELLATIONS) {
      expect(abbreviation).toMatch(/^[A-Z][A-Za-z]{2}$/);
      expect([name, genitive, english].every((text) => text.trim() !== "")).toBe(true);
      expect(letter).toMatch(/^[α-ω]$/u);
      expect(ra >= 0 && ra <= 360 && Math.abs(dec) <= 90).toBe(true);
    }
  });

  it("draw only lines between stars that are listed", () => {
    expect(FIGURES.length).toBeGreaterThanOrEqual(40);
    for (const { stars, paths } of FIGURES) {
      expect(paths.length).toBeGreaterThan(0);
      for (const path of paths) {
        expect(path.length).toBeGreaterThan(1);
        for (const index of path) expect(stars[index]).toBeDefined();
      }
    }
  });

  it("give each figure the middle that its constellation has", () => {
    for (const { constellation, stars, paths } of FIGURES) {
      const corners = [...new Set(paths.flat())].flatMap((index) => stars[index] ?? []);
      expect(separation(meanDirection(corners), constellationOf(constellation))).toBeLessThan(ROUNDING_DEGREES);
    }
  });

  it("call at most one star the brightest of its constellation, and none that a named star outshines", () => {
    for (const star of NAMED_STARS.filter((one) => one.brightest)) {
      const neighbours = NAMED_STARS.filter((one) => one.constellation === star.constellation && one !== star);
      expect(neighbours.every((one) => !one.brightest && one.magnitude >= star.magnitude)).toBe(true);
    }
  });

  it("throw for an abbreviation that does not exist", () => {
    expect(() => constellationOf("Xyz")).toThrow(RangeError);
  });
});
