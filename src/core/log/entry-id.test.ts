import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createEntryId, entryTime, isEntryId } from "./entry-id.ts";

const bytes = fc.uint8Array({ minLength: 10, maxLength: 10 });
/** All instants that 48 bits can count. */
const instant = fc.integer({ min: 0, max: 2 ** 48 - 1 });

describe("an identity", () => {
  it("has the form of a UUID version 7 and holds the instant it was made", () => {
    fc.assert(
      fc.property(instant, bytes, (now, random) => {
        const id = createEntryId(now, random);
        expect(isEntryId(id)).toBe(true);
        expect(entryTime(id)).toBe(now);
      }),
    );
  });

  it("sorts as text by the instant it was made", () => {
    fc.assert(
      fc.property(instant, instant, bytes, bytes, (a, b, one, other) => {
        fc.pre(a !== b);
        expect(createEntryId(a, one) < createEntryId(b, other)).toBe(a < b);
      }),
    );
  });

  it("keeps 74 random bits, so that two made at once differ", () => {
    fc.assert(
      fc.property(instant, bytes, bytes, (now, one, other) => {
        // The first six of the eighty bits are not used.
        const used = (random: Uint8Array) => [(random[0] ?? 0) & 3, ...random.slice(1)].join();
        expect(createEntryId(now, one) === createEntryId(now, other)).toBe(used(one) === used(other));
      }),
    );
  });

  it("ignores the part of a millisecond and an instant before 1970", () => {
    expect(entryTime(createEntryId(1234.9, new Uint8Array(10)))).toBe(1234);
    expect(entryTime(createEntryId(-5, new Uint8Array(10)))).toBe(0);
  });
});

describe("identities made one after another", () => {
  it("rise, even with a clock that stands still or runs back", () => {
    const clock = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(clock, fc.array(bytes, { minLength: 60, maxLength: 60 }), (instants, randoms) => {
        let last: string | undefined;
        instants.forEach((now, i) => {
          const id = createEntryId(now, randoms[i] as Uint8Array, last);
          expect(isEntryId(id)).toBe(true);
          if (last) expect(id > last).toBe(true);
          last = id;
        });
      }),
    );
  });

  it("go on into the next millisecond when the random part is used up", () => {
    const full = createEntryId(1000, new Uint8Array(10).fill(255));
    const next = createEntryId(1000, new Uint8Array(10).fill(255), full);
    expect(next > full).toBe(true);
    expect(entryTime(next)).toBe(1001);
  });

  it("stay close to the clock: a thousand in one millisecond keep that millisecond", () => {
    let last = createEntryId(1000, new Uint8Array(10));
    for (let i = 0; i < 1000; i++) last = createEntryId(1000, new Uint8Array(10).fill(i & 255), last);
    expect(entryTime(last)).toBe(1000);
  });
});

describe("a text", () => {
  it.each([
    "017F22E2-79B0-7CC3-98C4-DC0C0C07398F",
    "017f22e2-79b0-4cc3-98c4-dc0c0c07398f",
    "017f22e2-79b0-7cc3-c8c4-dc0c0c07398f",
    "017f22e279b07cc398c4dc0c0c07398f",
    "017f22e2-79b0-7cc3-98c4-dc0c0c07398f ",
    "",
  ])("is no identity if it is of another version, variant or spelling: “%s”", (text) => {
    expect(isEntryId(text)).toBe(false);
  });
});
