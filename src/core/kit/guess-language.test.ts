import { describe, expect, it } from "vitest";
import { guessLanguage, longestWord } from "./guess-language.ts";

describe("the language of a text", () => {
  it.each([
    ["Vega", "en", "en", "ltr"],
    ["النسر الواقع", "en", "ar", "rtl"],
    ["וגה", "en", "he", "rtl"],
    ["अभिजित्", "en", "hi", "ltr"],
    ["ดาวเวกา", "en", "th", "ltr"],
    ["织女星", "en", "zh", "ltr"],
    ["織姫星", "ja", "ja", "ltr"],
    ["こと座の星", "en", "ja", "ltr"],
    ["Βέγας", "en", "el", "ltr"],
    ["Вега", "uk", "uk", "ltr"],
    ["42", "de", "de", "ltr"],
    ["نسر واقع", "fa", "fa", "rtl"],
    ["Vega (النسر)", "en", "ar", "ltr"],
    ["النسر (Vega, the falling eagle)", "en", "en", "rtl"],
  ])("of “%s”, where %s is usual, is %s", (text, usual, code, direction) => {
    expect(guessLanguage(text, usual)).toEqual({ code, direction });
  });
});

describe("the longest word", () => {
  it("is what no line break divides", () => {
    expect(longestWord("a constellation\nof the north")).toBe("constellation");
    expect(longestWord("織女星は明るい")).toBe("");
  });
});
