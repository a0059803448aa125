import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { printableText } from "./printable-text.ts";

describe("printable text", () => {
  it.each([
    ["a\u2028b\u2029c\r\nd\re", "a\nb\nc\nd\ne"],
    ["Vega\ufeff!", "Vega\u2060!"],
    ["a\u0000b\u0007c\ud800d\ufffee\u{1ffff}", "a\ufffdb\ufffdc\ufffdd\ufffde\ufffd"],
    ["a\tb\n👍", "a\tb\n👍"],
  ])("of %j is %j", (text, printable) => {
    expect(printableText(text)).toBe(printable);
  });

  it("stays as it is when it is made printable again", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(printableText(printableText(text))).toBe(printableText(text));
      }),
    );
  });
});
