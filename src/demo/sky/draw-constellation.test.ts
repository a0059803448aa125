import { describe, expect, it } from "vitest";
import { DRAWING, drawConstellation, type PlacedStar, placeStars } from "./draw-constellation.ts";
import { CONSTELLATIONS, FIGURES, type Figure, NAMED_STARS, type NamedStar } from "./sky-tables.ts";
import { separation } from "./stereographic.ts";

/** The two tables round positions alike, so a named star and a figure star are the same point. */
const SAME_STAR_DEGREES = 0.002;

/** δ, ν and β Octantis from the catalogue: a figure beside the south celestial pole, across 0 h. */
const NEAR_THE_POLE: Figure = {
  constellation: "Oct",
  stars: [
    { ra: 216.73, dec: -83.668, magnitude: 4.31 },
    { ra: 325.369, dec: -77.39, magnitude: 3.73 },
    { ra: 341.515, dec: -81.382, magnitude: 4.13 },
  ],
  paths: [[0, 2, 1, 0]],
};

function figureOf(abbreviation: string): Figure {
  const figure = FIGURES.find((one) => one.constellation === abbreviation);
  if (!figure) throw new Error(`no figure of ${abbreviation}`);
  return figure;
}

function named(name: string): NamedStar {
  const star = NAMED_STARS.find((one) => one.name === name);
  if (!star) throw new Error(`no star ${name}`);
  return star;
}

/** Where a star with a proper name lies on the drawing of its own constellation. */
function placeOf(name: string): PlacedStar {
  const star = named(name);
  const figure = figureOf(star.constellation);
  const index = figure.stars.findIndex((one) => separation(one, star) < SAME_STAR_DEGREES);
  const placed = placeStars(figure)[index];
  if (!placed) throw new Error(`${name} is not on its drawing`);
  return placed;
}

describe("a drawing of a constellation", () => {
  it("shows Betelgeuse to the upper left of Rigel, as the sky does", () => {
    const [betelgeuse, rigel] = [placeOf("Betelgeuse"), placeOf("Rigel")];
    expect(betelgeuse.x).toBeLessThan(rigel.x);
    expect(betelgeuse.y).toBeLessThan(rigel.y);
  });

  it("shows the belt of Orion between shoulders and feet, Mintaka in the west", () => {
    const [mintaka, alnilam, alnitak] = [placeOf("Mintaka"), placeOf("Alnilam"), placeOf("Alnitak")];
    expect(mintaka.x).toBeGreaterThan(alnilam.x);
    expect(alnilam.x).toBeGreaterThan(alnitak.x);
    for (const star of [mintaka, alnilam, alnitak]) {
      expect(star.y).toBeGreaterThan(placeOf("Bellatrix").y);
      expect(star.y).toBeLessThan(placeOf("Saiph").y);
    }
  });

  it("shows the bear's handle to the left of the pan, and Castor above Pollux", () => {
    expect(placeOf("Alkaid").x).toBeLessThan(placeOf("Mizar").x);
    expect(placeOf("Mizar").x).toBeLessThan(placeOf("Dubhe").x);
    expect(placeOf("Castor").y).toBeLessThan(placeOf("Pollux").y);
  });

  it("shows Polaris at the upper end of Ursa Minor, since the pole is up", () => {
    const figure = placeStars(figureOf("UMi")).filter((star) => star.inFigure);
    expect(placeOf("Polaris").y).toBe(Math.min(...figure.map((star) => star.y)));
  });

  it("keeps proportions: distances between neighbouring stars grow with their angles", () => {
    const pixels = (a: string, b: string): number =>
      Math.hypot(placeOf(a).x - placeOf(b).x, placeOf(a).y - placeOf(b).y);
    const ratio = pixels("Betelgeuse", "Rigel") / pixels("Alnitak", "Mintaka");
    const angles = separation(named("Betelgeuse"), named("Rigel")) / separation(named("Alnitak"), named("Mintaka"));
    // The projection stretches the edge of a field as wide as Orion by less than two in a hundred.
    expect(ratio / angles).toBeGreaterThan(0.98);
    expect(ratio / angles).toBeLessThan(1.02);
  });

  it("makes a brighter star the larger disc", () => {
    expect(placeOf("Sirius").radius).toBeGreaterThan(placeOf("Adhara").radius);
    expect(placeOf("Adhara").radius).toBeGreaterThan(placeOf("Aludra").radius);
  });

  it.each(FIGURES)("keeps the whole figure of $constellation inside the margins", (figure) => {
    const { width, height, margin } = DRAWING;
    const corners = placeStars(figure).filter((star) => star.inFigure);
    for (const { x, y } of corners) {
      expect(x).toBeGreaterThanOrEqual(margin - 0.01);
      expect(x).toBeLessThanOrEqual(width - margin + 0.01);
      expect(y).toBeGreaterThanOrEqual(margin - 0.01);
      expect(y).toBeLessThanOrEqual(height - margin + 0.01);
    }
    expect((Math.min(...corners.map(({ x }) => x)) + Math.max(...corners.map(({ x }) => x))) / 2).toBeCloseTo(
      width / 2,
      3,
    );
  });

  it("stays whole beside the pole and across 0 h", () => {
    const [delta, nu, beta] = placeStars(NEAR_THE_POLE) as [PlacedStar, PlacedStar, PlacedStar];
    const apart = (a: PlacedStar, b: PlacedStar): number => Math.hypot(a.x - b.x, a.y - b.y);
    const [first, second, third] = NEAR_THE_POLE.stars as [NamedStar, NamedStar, NamedStar];
    expect(apart(delta, beta) / apart(nu, beta)).toBeCloseTo(separation(first, third) / separation(second, third), 1);
    const shifted = {
      ...NEAR_THE_POLE,
      stars: NEAR_THE_POLE.stars.map((star) => ({ ...star, ra: (star.ra + 30) % 360 })),
    };
    const turned = placeStars(shifted);
    expect(turned.map(({ x }) => Math.round(x))).toEqual([delta, nu, beta].map(({ x }) => Math.round(x)));
  });

  it("refuses a line to a star that is not listed", () => {
    expect(() => drawConstellation({ ...NEAR_THE_POLE, paths: [[0, 7]] })).toThrow(RangeError);
  });

  it("is the same on every run and never tells the name", () => {
    for (const figure of FIGURES) {
      const svg = drawConstellation(figure);
      expect(drawConstellation(structuredClone(figure))).toBe(svg);
      for (const { name, abbreviation } of CONSTELLATIONS) {
        expect(svg).not.toContain(name);
        expect(svg).not.toContain(`"${abbreviation}"`);
      }
      expect(svg).not.toContain("<text");
      expect(svg).not.toContain("NaN");
    }
  });
});
