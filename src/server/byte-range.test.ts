import { expect, it } from "vitest";
import { byteRange } from "./byte-range.ts";

// The examples of RFC 9110, section 14.1.2, for a representation of 10,000 bytes.
it.each([
  ["bytes=0-499", { from: 0, to: 499 }],
  ["bytes=500-999", { from: 500, to: 999 }],
  ["bytes=-500", { from: 9_500, to: 9_999 }],
  ["bytes=9500-", { from: 9_500, to: 9_999 }],
])("%s", (header, range) => expect(byteRange(header, 10_000)).toEqual(range));

it.each(["bytes=10000-", "bytes=-0"])("%s is outside", (header) => expect(byteRange(header, 10_000)).toBe("outside"));

it.each([undefined, "", "bytes=-", "bytes=0-0,-1", "bytes=9-3", "items=0-5", "bytes=a-b"])(
  "%s is no single range",
  (header) => expect(byteRange(header, 10_000)).toBeNull(),
);
