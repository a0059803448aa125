import { describe, expect, it } from "vitest";
import { chooseFonts, type LoadedFamily } from "./fonts.ts";

const family = (characters: string): LoadedFamily => ({
  blobs: [],
  has: (codePoint) => characters.includes(String.fromCodePoint(codePoint)),
  advance: () => 1,
});

const text = (words: string, language = "en") => ({ text: words, language, name: "the prompt of card 1-3" });

describe("the fonts of a kit", () => {
  it("are only those that a character needs", () => {
    const { familiesFor } = chooseFonts([text("Vega"), text("וגה", "he")]);
    expect(familiesFor("en")).toEqual(["Noto Sans", "Noto Sans Hebrew"]);
  });

  it("set shared characters in the form of the language", () => {
    expect(chooseFonts([text("直", "ja")]).familiesFor("ja")).toEqual(["Noto Sans", "Noto Sans JP"]);
    expect(chooseFonts([text("直", "zh")]).familiesFor("zh")).toEqual(["Noto Sans", "Noto Sans SC"]);
  });

  it("set quotation marks in Chinese in the typeface of its characters, where there is one", () => {
    const wide = { ...family("“”"), advance: () => 2 };
    const both = new Map([
      ["Noto Sans", family("“”")],
      ["Noto Sans SC", wide],
    ]);
    const width = (language: string, families: ReadonlyMap<string, LoadedFamily>) =>
      chooseFonts([], (name) => families.get(name) ?? null).widthOf("“”", language, false);
    expect(width("zh", both)).toBe(4);
    expect(width("en", both)).toBe(2);
    expect(width("zh", new Map([["Noto Sans", family("“”")]]))).toBe(2);
  });

  it("that are not installed are named with what is missing for want of them", () => {
    const only = new Map([["Noto Sans", family("Veg\ufffd")]]);
    const { notices, settable } = chooseFonts([text("Vega 星")], (name) => only.get(name) ?? null);
    expect(notices).toHaveLength(1);
    expect(notices[0]).toContain("“a” (U+0061), “星” (U+661F)");
    expect(notices[0]).toContain("@expo-google-fonts/noto-sans-jp");
    expect(settable("Vega 星", "en")).toBe("Veg\ufffd \ufffd");
  });

  it("cover every script that is promised", () => {
    const promised = [
      "Ełęß ñ",
      "Βέγας",
      "Вега",
      "النسر الواقع",
      "שִׁבְתַּאי",
      "अभिजित्",
      "ทางช้างเผือก",
      "织女星",
      "織女星",
      "すばる",
      "ˈviːɡə",
    ];
    expect(chooseFonts(promised.map((words) => text(words))).notices).toEqual([]);
  });
});
