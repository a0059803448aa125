import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromBase45, toBase45 } from "./base45.ts";

const bytesOf = (text: string): Uint8Array => Uint8Array.from([...text].map((one) => one.charCodeAt(0)));

describe("Base45", () => {
  // RFC 9285, sections 4.3 and 4.4 (from memory).
  it.each([
    ["AB", "BB8"],
    ["Hello!!", "%69 VD92EX0"],
    ["base-45", "UJCLQE7W581"],
    ["ietf!", "QED8WEX0"],
  ])("writes “%s” as “%s”", (plain, text) => {
    expect(toBase45(bytesOf(plain))).toBe(text);
    expect(fromBase45(text)).toEqual(bytesOf(plain));
  });

  it("gives any bytes back", () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(fromBase45(toBase45(bytes))?.join()).toBe(bytes.join());
      }),
    );
  });

  // RFC 9285, section 6: values beyond the bytes they stand for, and characters outside the alphabet.
  it.each(["GGW", ":::", "::", "a", "A", "ab", "ABCD", "AÄ8"])("refuses “%s”", (text) => {
    expect(fromBase45(text)).toBeNull();
  });
});
