import * as Astronomy from "astronomy-engine";
import { describe, expect, it } from "vitest";
import { gapTexts } from "../core/facts/gaps.ts";
import { PLANET_FACTS } from "./planet-facts.ts";

const RANKS = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"];
/** Any moment will do: axes and orbits hardly change in centuries. */
const WHEN = new Date("2026-01-01T00:00:00Z");

/** Degrees between a planet's axis (the north of its rotation) and its orbit's axis. */
function tilt(planet: Astronomy.Body, spin: 1 | -1): number {
  const { north } = Astronomy.RotationAxis(planet, WHEN);
  const { x, y, z, vx, vy, vz } = Astronomy.BaryState(planet, WHEN);
  const orbit = [y * vz - z * vy, z * vx - x * vz, x * vy - y * vx] as const;
  const along = north.x * orbit[0] + north.y * orbit[1] + north.z * orbit[2];
  return (Math.acos((spin * along) / (Math.hypot(...orbit) * north.Length())) * 180) / Math.PI;
}

describe("the planet facts", () => {
  it("count the planets outwards as their orbital periods do", () => {
    const ordered = PLANET_FACTS.filter(({ statement }) => statement.startsWith("Counted")).map(({ statement }) =>
      gapTexts(statement),
    );
    const byRank = RANKS.map((rank) => ordered.find((gaps) => gaps[1] === rank)?.[0] as Astronomy.Body);
    const byPeriod = [...byRank].sort((a, b) => Astronomy.PlanetOrbitalPeriod(a) - Astronomy.PlanetOrbitalPeriod(b));
    expect(byRank).toEqual(byPeriod);
    expect(new Set(byRank).size).toBe(8);
  });

  it("say of the one planet whose axis lies near its orbital plane that it does", () => {
    const planets = ["Mercury", "Venus", "Earth", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune"] as Astronomy.Body[];
    const lying = planets.filter((planet) => Math.abs(tilt(planet, 1) - 90) < 10);
    const fact = PLANET_FACTS.find(({ statement }) => statement.includes("axis of"));
    expect(gapTexts(fact?.statement ?? "")).toEqual(lying);
    // Turning backwards about its northern pole, it turns forwards about the other one: 98 degrees over.
    expect(tilt("Uranus" as Astronomy.Body, -1)).toBeCloseTo(98, 0);
    expect(fact?.note).toContain("98 degrees");
  });

  it("say that the Sun rises in the west on Venus, which turns backwards", () => {
    const spin = (planet: string): number => {
      const later = new Date(WHEN.getTime() + 86_400_000);
      const body = planet as Astronomy.Body;
      return Astronomy.RotationAxis(body, later).spin - Astronomy.RotationAxis(body, WHEN).spin;
    };
    expect(spin("Venus")).toBeLessThan(0);
    expect(spin("Earth")).toBeGreaterThan(0);
    expect(PLANET_FACTS.some(({ statement }) => statement.includes("Venus, the Sun would rise in the [west]"))).toBe(
      true,
    );
  });

  it("have gaps that can be read", () => {
    for (const { statement } of PLANET_FACTS) expect(gapTexts(statement).length).toBeGreaterThan(0);
  });
});
