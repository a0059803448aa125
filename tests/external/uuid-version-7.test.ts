// Identities against the test vector of RFC 9562, appendix A.6.
import { describe, expect, it } from "vitest";
import { createEntryId, entryTime, isEntryId } from "../../src/core/log/entry-id.ts";

// "Example of a UUIDv7 Value": unix_ts_ms 0x017F22E279B0 (Tuesday, February 22, 2022 2:22:22.00 PM GMT-05:00),
// rand_a 0xCC3, rand_b 0b01 followed by 0x8C4DC0C0C07398F.
const VECTOR = "017F22E2-79B0-7CC3-98C4-DC0C0C07398F";
const INSTANT = Date.parse("2022-02-22T14:22:22.000-05:00");

/** The 12 bits of rand_a and the 62 of rand_b, right-aligned in ten bytes. */
const RANDOM = ((0xcc3n << 62n) | (0b01n << 60n) | 0x8c4dc0c0c07398fn).toString(16).padStart(20, "0");

describe("the UUIDv7 of RFC 9562", () => {
  it("is made from its time and its random bits", () => {
    const bytes = Uint8Array.from(RANDOM.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
    expect(bytes).toHaveLength(10);
    expect(createEntryId(INSTANT, bytes)).toBe(VECTOR.toLowerCase());
  });

  it("is recognised and gives its time back", () => {
    expect(isEntryId(VECTOR.toLowerCase())).toBe(true);
    expect(entryTime(VECTOR.toLowerCase())).toBe(INSTANT);
    expect(INSTANT).toBe(0x017f22e279b0);
  });
});
