import { describe, expect, it } from "vitest";
import { guessLanguage, longestWord } from "../core/kit/guess-language.ts";
import type { SizeTrial } from "../core/kit/line-heights.ts";
import { type TextItem, textItem } from "../core/kit/page.ts";
import { uniform } from "../core/random.ts";
import { CONSTELLATIONS } from "../demo/sky/sky-tables.ts";
import { drawFormulae } from "./draw-formulae.ts";
import { typesetKit } from "./typeset.ts";

/** Sentences of many kinds; what is made of them is cut and joined at random. */
const WORDS = [
  ...CONSTELLATIONS.slice(0, 30).flatMap(({ name, genitive }) => [name, `${genitive}.`]),
  ..."AVAVA TeaTime Wavy, fi ffi — “quoted” (in brackets) well-known and/or 12.5 −0.03° α² A/B e.g. No\u00a017 ! ? … x=1".split(
    " ",
  ),
  "Donaudampfschifffahrtsgesellschaft",
];
const LATIN = (seed: string) => (i: number) => WORDS[Math.floor(uniform(seed, `${i}`) * WORDS.length)] ?? "";
const SENTENCES: Readonly<Record<string, string>> = {
  ar: "النسر الواقع ألمع نجم في كوكبة القيثارة وهو من ألمع نجوم السماء",
  he: "וגה הוא הכוכב הבהיר ביותר בקבוצת הכוכבים נבל",
  hi: "अभिजित् वीणा तारामंडल का सबसे रोशन तारा है और रात के आसमान में चमकता है",
  th: "ดาวเวกาเป็นดาวฤกษ์ที่สว่างที่สุดในกลุ่มดาวพิณ",
  zh: "织女星是天琴座中最亮的恒星，也是夜空中第五亮的恒星。",
  ja: "ベガは、こと座で最も明るい恒星で、「織姫星」としても知られている。",
  ru: "Вега — самая яркая звезда в созвездии Лиры",
};

/** Boxes with texts of all lengths, scripts and looks, set on one page each. */
function boxes(count: number): readonly TextItem[] {
  return Array.from({ length: count }, (_, i) => {
    const roll = (what: string): number => uniform(what, `${i}`);
    const length = 1 + Math.floor(roll("length") ** 2 * 40);
    const scripts = Object.values(SENTENCES);
    const script = scripts[Math.floor(roll("script") * scripts.length)] ?? "";
    const text =
      roll("kind") < 0.6
        ? Array.from({ length }, (_, n) => LATIN(`${i}`)(n)).join(roll("lines") < 0.1 ? "\n" : " ")
        : Array.from({ length: Math.ceil(length / 8) }, () => script).join(" ");
    const { code: language, direction } = guessLanguage(text, "en");
    const place = { x: 10, y: 10, width: 30 + roll("width") * 100, height: 4 + roll("height") * 50 };
    const runs = [{ text, look: roll("look") < 0.2 ? ("answer" as const) : ("plain" as const) }];
    return textItem(place, text, { runs, language, direction, longest: longestWord(text), most: 20, least: 8 });
  });
}

/** Every size, as if nothing were known of widths. */
function everySize({ most, least }: TextItem): SizeTrial {
  const sizes = Array.from({ length: (most - least) * 2 + 1 }, (_, i) => most - i / 2);
  return { whole: sizes, sure: null, hyphenated: sizes, wordFits: 0 };
}

const FORMULAE = [
  "n",
  "T^2 \\propto a^3",
  "\\frac{a}{b}",
  "\\sum_{i=1}^n x_i^2",
  "\\sqrt{\\frac{1+z}{1-z}} - 1",
  "\\rule{12em}{1em}",
];

/** The same boxes with formulae between the words. */
const boxesWithFormulae = (count: number): readonly TextItem[] =>
  boxes(count).map((item, i) => {
    const formula = FORMULAE[Math.floor(uniform("formula", `${i}`) * FORMULAE.length)] ?? "";
    const runs = item.runs.flatMap((run) => [
      run,
      { text: formula, look: "formula" as const },
      { ...run, text: ", too" },
    ]);
    return { ...item, runs };
  });

describe("sizes that are ruled out or taken by the widths of characters alone", () => {
  it("are those that the engine finds by trying every size, in every script", () => {
    const pages = boxes(400).map((item) => ({ width: 210, height: 297, items: [item] }));
    const kit = { title: "Sizes", language: "en", pages, pictures: new Map() };
    const tried: number[] = [];
    const quick = typesetKit(kit);
    const thorough = typesetKit(kit, (item) => {
      const trial = everySize(item);
      tried.push(trial.whole.length);
      return trial;
    });
    expect(tried).toHaveLength(400);
    expect(quick.notices).toEqual(thorough.notices);
    expect(Buffer.from(quick.pdf).equals(Buffer.from(thorough.pdf))).toBe(true);
  });

  it("are so beside formulae too, which are measured and not guessed", async () => {
    const pages = boxesWithFormulae(60).map((item) => ({ width: 210, height: 297, items: [item] }));
    const kit = { title: "Sizes", language: "en", pages, pictures: new Map(), formulae: await drawFormulae(pages) };
    const [quick, thorough] = [typesetKit(kit), typesetKit(kit, everySize)];
    expect(quick.notices).toEqual(thorough.notices);
    expect(Buffer.from(quick.pdf).equals(Buffer.from(thorough.pdf))).toBe(true);
  });
});
