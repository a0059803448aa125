import { describe, expect, it } from "vitest";
import { CONSTELLATIONS, constellationOf } from "./sky-tables.ts";
import { skyTags } from "./sky-tags.ts";

describe("sky tags", () => {
  it.each([
    ["Leo", "spring sky"],
    ["Vir", "spring sky"],
    ["Lyr", "summer sky"],
    ["Sgr", "summer sky"],
    ["Peg", "autumn sky"],
    ["Cet", "autumn sky"],
    ["Ori", "winter sky"],
    ["Aur", "winter sky"],
    ["Cru", "southern sky"],
    ["Oct", "southern sky"],
    ["UMi", "circumpolar in the north"],
  ])("of %s are %s", (abbreviation, tag) => {
    expect(skyTags(constellationOf(abbreviation))).toEqual([tag]);
  });

  it("are left out at the turn of a season", () => {
    expect(skyTags({ ra: 135, dec: 20 })).toEqual([]);
    expect(skyTags({ ra: 224, dec: 20 })).toEqual([]);
  });

  it("agree with the Sun: what stands highest on an evening of a season is far from the Sun then", () => {
    const sunAtMiddle = { "spring sky": 45, "summer sky": 135, "autumn sky": 225, "winter sky": 315 };
    for (const constellation of CONSTELLATIONS) {
      for (const tag of skyTags(constellation)) {
        if (!(tag in sunAtMiddle)) continue;
        const ahead = (constellation.ra - sunAtMiddle[tag as keyof typeof sunAtMiddle] + 360) % 360;
        // Nine hours past the Sun's noon is 135 degrees; a season reaches half of 90 degrees either way.
        expect(Math.abs(ahead - 135)).toBeLessThanOrEqual(45);
      }
    }
  });
});
