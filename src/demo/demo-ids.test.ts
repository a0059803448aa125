import { describe, expect, it } from "vitest";
import { entryTime, isEntryId } from "../core/log/entry-id.ts";
import { seededIds } from "./demo-ids.ts";

const MOMENTS = [1_700_000_000_000, 1_700_000_000_000, 1_700_000_000_500, 1_700_000_000_400, 1_700_000_060_000];

describe("seeded identities", () => {
  it("are UUIDs of version 7 that sort in the order in which they were made, even where the clock stands or runs back", () => {
    const next = seededIds("seed");
    const ids = MOMENTS.map(next);
    expect(ids.every(isEntryId)).toBe(true);
    expect([...ids].sort()).toEqual(ids);
    expect(new Set(ids).size).toBe(ids.length);
    expect(entryTime(ids[0] as string)).toBe(MOMENTS[0]);
    expect(entryTime(ids[4] as string)).toBe(MOMENTS[4]);
  });

  it("repeat for the same seed and differ for another", () => {
    const [one, again, other] = ["a", "a", "b"].map((seed) => MOMENTS.map(seededIds(seed)));
    expect(again).toEqual(one);
    expect(other).not.toEqual(one);
  });
});
