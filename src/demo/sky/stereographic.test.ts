import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meanDirection, project, separation, unproject } from "./stereographic.ts";

/** Rounding of a chain of trigonometric functions in double precision, in degrees. */
const ROUNDING = 1e-6;

const direction = fc.record({
  ra: fc.double({ min: 0, max: 359.99, noNaN: true }),
  dec: fc.double({ min: -89.9, max: 89.9, noNaN: true }),
});

describe("the stereographic projection", () => {
  it("puts north up and east to the left", () => {
    const centre = { ra: 80, dec: 10 };
    const north = project(centre, { ra: 80, dec: 11 });
    const east = project(centre, { ra: 81, dec: 10 });
    expect(north.x).toBeCloseTo(0, 12);
    expect(north.y).toBeGreaterThan(0);
    expect(east.x).toBeLessThan(0);
  });

  it("is undone by its inverse", () => {
    fc.assert(
      fc.property(direction, direction, (centre, at) => {
        fc.pre(separation(centre, at) < 150);
        expect(separation(unproject(centre, project(centre, at)), at)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("keeps distances from the centre to scale: 2 tan(c/2), worked by hand for 90 degrees", () => {
    const edge = project({ ra: 0, dec: 90 }, { ra: 30, dec: 0 });
    expect(Math.hypot(edge.x, edge.y)).toBeCloseTo(2, 12);
  });

  it("measures the pole's distance as the complement of the declination", () => {
    expect(separation({ ra: 123, dec: 90 }, { ra: 37.954, dec: 89.264 })).toBeCloseTo(0.736, 6);
  });
});

describe("the mean direction", () => {
  it("crosses 0 h without jumping to the other side of the sky", () => {
    const { ra, dec } = meanDirection([
      { ra: 350, dec: 0 },
      { ra: 20, dec: 0 },
    ]);
    expect(ra).toBeCloseTo(5, 9);
    expect(dec).toBeCloseTo(0, 9);
  });

  it("of a ring about the pole is the pole", () => {
    const ring = [0, 90, 180, 270].map((ra) => ({ ra, dec: -85 }));
    expect(meanDirection(ring).dec).toBeCloseTo(-90, 9);
  });
});
