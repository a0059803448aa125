import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Replacement, replaceText } from "./replace-text.ts";

const order = (find: string, by: string, more: Partial<Replacement> = {}): Replacement => ({
  find,
  by,
  matchCase: true,
  wholeWords: false,
  ...more,
});

describe("replacing text", () => {
  it.each([
    ["Vega is in Lyra. Vega is blue.", order("Vega", "α Lyrae"), "α Lyrae is in Lyra. α Lyrae is blue."],
    ["vega and Vega", order("VEGA", "Deneb", { matchCase: false }), "Deneb and Deneb"],
    ["Marsh, Mars", order("Mars", "the planet", { wholeWords: true }), "Marsh, the planet"],
    ["Крабовидная туманность", order("туманность", "пыль", { wholeWords: true }), "Крабовидная пыль"],
    ["M31 (M3)", order("M3", "Messier 3", { wholeWords: true }), "M31 (Messier 3)"],
    ["1.5 and 115", order("1.5", "2"), "2 and 115"],
    ["a (b) [c]", order("(b) [c]", "$&"), "a $&"],
    ["Boo\u0308tes", order("Boötes", "Lyra"), "Lyra"],
    ["天の川と川", order("川", "河"), "天の河と河"],
  ])("%s", (text, replacement, expected) => expect(replaceText(text, replacement)).toBe(expected));

  it("does not take a letter from below its mark", () => {
    expect(replaceText("x\u0323x", order("x", "y"))).toBe("x\u0323y");
  });

  it("replaces nothing for nothing, and gives the same text where nothing is found", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        expect(replaceText(text, order("", "x"))).toBe(text);
        expect(replaceText(text, order(`${text}.`, "x"))).toBe(text);
      }),
    );
  });

  it("leaves none of what was looked for, unless it is put there", () => {
    const letters = fc.string({ unit: fc.constantFrom("a", "b", "c", " "), maxLength: 30 });
    fc.assert(
      fc.property(letters, fc.constantFrom("a", "ab", "bc"), (text, find) => {
        expect(replaceText(text, order(find, "-"))).not.toContain(find);
      }),
    );
  });
});
