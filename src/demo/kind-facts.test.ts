import * as Astronomy from "astronomy-engine";
import { describe, expect, it } from "vitest";
import { contentProblem } from "../core/facts/check-content.ts";
import type { FactContent } from "../core/facts/fact.ts";
import { kindFacts, SUNS_WAY } from "./kind-facts.ts";
import { placeStars } from "./sky/draw-constellation.ts";
import { CLICKS, PULSARS, pulsarClicks } from "./sky/pulsar-clicks.ts";
import { CONSTELLATIONS, FIGURES, NAMED_STARS } from "./sky/sky-tables.ts";

const hashes = {
  pictures: new Map(CONSTELLATIONS.map(({ name }) => [name, "a".repeat(64)])),
  sounds: new Map(PULSARS.map(({ name }, i) => [name, `${i}`.repeat(64)])),
};
const contents = kindFacts(hashes).map(({ content }) => content);
const ofKind = <K extends FactContent["kind"]>(kind: K) =>
  contents.filter((one): one is Extract<FactContent, { kind: K }> => one.kind === kind);
const DAY_MS = 86_400_000;

describe("the demo's lists, labels, formulae, spellings and sounds", () => {
  it("can all be asked, and there are some of each kind", () => {
    for (const content of contents) expect(contentProblem(content)).toBeNull();
    const kinds = ["list", "labelled", "formula", "spelling", "sound"] as const;
    expect(kinds.map((kind) => ofKind(kind).length)).toEqual([3, 2, 3, 6, 3]);
  });

  // Reference program: astronomy-engine, the Sun's place day by day and the constellation boundaries of 1930.
  it("name the constellations of the Sun's way in their order", () => {
    const equinox = Astronomy.Seasons(2026).mar_equinox.date.getTime();
    const way: string[] = [];
    for (let day = 0; day < 365; day++) {
      const when = new Date(equinox + day * DAY_MS);
      const { elon } = Astronomy.SunPosition(when);
      const toJ2000 = Astronomy.Rotation_ECT_EQJ(Astronomy.MakeTime(when));
      const sun = Astronomy.VectorFromSphere(new Astronomy.Spherical(0, elon, 1), when);
      const { ra, dec } = Astronomy.EquatorFromVector(Astronomy.RotateVector(toJ2000, sun));
      const { name } = Astronomy.Constellation(ra, dec);
      if (way.at(-1) !== name) way.push(name);
    }
    expect(way.slice(0, SUNS_WAY.length)).toEqual(SUNS_WAY);
    expect(way.slice(SUNS_WAY.length)).toEqual(["Pisces"]);
  });

  // Reference program: astronomy-engine, the moons' distances from Jupiter's centre.
  it("name the moons of Jupiter from the innermost outwards", () => {
    const { io, europa, ganymede, callisto } = Astronomy.JupiterMoons(new Date("2026-01-01T00:00:00Z"));
    const distances = Object.entries({ Io: io, Europa: europa, Ganymede: ganymede, Callisto: callisto }).map(
      ([name, { x, y, z }]) => ({ name, away: Math.hypot(x, y, z) }),
    );
    const names = distances.sort((a, b) => a.away - b.away).map(({ name }) => name);
    expect(ofKind("list")[1]?.items).toEqual(names);
  });

  // Reference program: astronomy-engine. Jupiter's pull on the Sun shortens its own year a little: T² = a³ holds within 0.2 %.
  it("say of Jupiter what Kepler's third law says", () => {
    const years = Astronomy.PlanetOrbitalPeriod(Astronomy.Body.Jupiter) / 365.25;
    expect(years).toBeCloseTo(11.9, 1);
    expect(5.2 ** 3 / years ** 2).toBeCloseTo(1, 2);
  });

  it("put each label round its own star of the drawing, and round no other that is labelled", () => {
    for (const [n, constellation] of ["Ori", "UMa"].entries()) {
      const figure = FIGURES.find((one) => one.constellation === constellation);
      const drawn = figure ? placeStars(figure) : [];
      for (const label of ofKind("labelled")[n]?.labels ?? []) {
        const star = NAMED_STARS.find(({ name }) => name === label.name);
        const inside = drawn.filter(
          ({ x, y }) =>
            Math.abs(x / 900 - label.x - label.width / 2) < label.width / 2 &&
            Math.abs(y / 675 - label.y - label.height / 2) < label.height / 2,
        );
        const brightest = inside.reduce((a, b) => (b.magnitude < a.magnitude ? b : a));
        expect(Math.abs(brightest.magnitude - (star?.magnitude ?? Number.NaN)), label.name).toBeLessThan(0.2);
      }
    }
  });

  it("click in the time of the pulsar", () => {
    for (const { period } of PULSARS) {
      const samples = pulsarClicks(period).subarray(44);
      const loud = [...samples.keys()].filter((i) => (samples[i] ?? 0) > 185);
      const starts = loud.filter((i, n) => n === 0 || i - (loud[n - 1] ?? 0) > 0.01 * CLICKS.rate);
      expect(starts.length).toBe(Math.ceil(CLICKS.seconds / period));
    }
  });
});
