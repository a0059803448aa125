import { describe, expect, it } from "vitest";
import { kitCard, kitPlan } from "../../tests/support/kit-plan.ts";
import { type GreyPage, type PdfReading, readPdf } from "../../tests/support/pdf-tools.ts";
import type { KitCard } from "../core/kit/card-faces.ts";
import { printKit } from "./print-kit.ts";

const DPI = 200;

/** Prints one card without marks and hands the reading to `look`. */
async function reading<T>(card: KitCard, look: (pdf: PdfReading) => T): Promise<T> {
  const style = { title: "", mark: "none", language: "en" } as const;
  const pdf = readPdf((await printKit(kitPlan({ cards: [card], style }), new Map())).pdf);
  try {
    return look(pdf);
  } finally {
    pdf.close();
  }
}

/** Heights of stretches of rows with ink inside the first card, in dots: a line of text each if none touch. */
function linesOf({ width, dots }: GreyPage): readonly number[] {
  const dot = (mm: number) => Math.round((mm / 25.4) * DPI);
  const lines: number[] = [];
  let height = 0;
  for (let y = dot(5); y < dot(70); y++) {
    const inked = dots.subarray(y * width + dot(5), y * width + dot(100)).some((grey) => grey < 128);
    if (inked) height++;
    else if (height > 0) lines.push(height);
    if (!inked) height = 0;
  }
  return lines;
}

describe("lines of a script with signs above and below its letters", () => {
  // Words with the deepest and highest signs, over each other.
  it.each([
    ["Devanagari", "दूसरी कूर्म हृदय\nमें हैं कीर्ति पूर्ण\nमौलि गूढ़ कीं"],
    ["Thai", "ปู่ ผู้ญู\nที่ ปี่ น้ำ\nรู้ สู้ ปิ่น"],
    ["Arabic", "جميع العقرب\nأُلْفَة إلى طويل\nبِيَجْعٍ لأَ"],
    ["Latin", "gjpqy Ångström\nÉÄÖ gypj\nŽçğ Ñ"],
  ])("(%s) do not touch", async (_, text) => {
    const lines = await reading(kitCard(1, text, "yes"), (pdf) => linesOf(pdf.draw(1, DPI)));
    // Dots and rings over capitals may stand free, so there can be more stretches than lines.
    expect(lines.length).toBeGreaterThanOrEqual(3);
  });
});

describe("a text in print", () => {
  it("is hyphenated by the rules of its own language", async () => {
    const word = "Sonnenfleckenrelativzahl".repeat(4);
    const breaks = (language: string) =>
      reading({ ...kitCard(1, word, "yes"), language }, (pdf) =>
        (pdf.pages[0] ?? "")
          .trim()
          .split("\n")
          .slice(0, -1)
          .map((line) => line.replace(/[-\u00ad\u2010]$/, "")),
      );
    const german = await breaks("de");
    expect(german.length).toBeGreaterThan(0);
    // From memory, by the rules of 1996: Son-nen-fle-cken-re-la-tiv-zahl.
    for (const line of german) expect(line).toMatch(/(Son|nen|fle|cken|re|la|tiv|zahl)$/);
    expect(await breaks("en")).not.toEqual(german);
  });

  it("in Chinese has its quotation marks as wide as its characters", async () => {
    const width = (text: string) =>
      reading({ ...kitCard(1, text, "yes"), language: "zh" }, (pdf) => {
        const { width: across, dots } = pdf.draw(1, DPI);
        const columns = [...dots.keys()].filter((i) => (dots[i] ?? 255) < 128 && i % across > 40 && i % across < 780);
        const inside = columns.filter((i) => i / across > 40 && i / across < 540).map((i) => i % across);
        return Math.max(...inside) - Math.min(...inside);
      });
    const [plain, quoted] = [await width("牛郎织女一二三四"), await width("牛郎“织”女一二三四")];
    // Two marks of an em, at 20 points; in a typeface for Latin letters they are less than half as wide.
    expect(quoted - plain).toBeGreaterThan(1.5 * (20 / 72) * DPI);
  });

  it("in Japanese begins no line with a mark that closes", async () => {
    const text = "ベガは、こと座で最も明るい恒星で、「織姫星」としても知られている。".repeat(3);
    const lines = await reading(kitCard(1, text, "yes"), (pdf) => (pdf.pages[0] ?? "").trim().split("\n"));
    expect(lines.length).toBeGreaterThan(3);
    for (const line of lines) expect(line).not.toMatch(/^[、。」]|「$/);
  });
});
