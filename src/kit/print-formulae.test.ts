import { PDFDict, PDFDocument, PDFHexString, PDFName, PDFString } from "pdf-lib";
import { describe, expect, it } from "vitest";
import { kitCard, kitPlan } from "../../tests/support/kit-plan.ts";
import { type GreyPage, readPdf } from "../../tests/support/pdf-tools.ts";
import { type CardSide, type CardText, EMPTY_SIDE } from "../core/cards/cards.ts";
import { formulaRuns } from "../core/text/formula-runs.ts";
import { printKit } from "./print-kit.ts";

const DPI = 300;
/** Two dots: outlines begin and end between dots. */
const DOTS = 2;

const side = (text: readonly CardText[]): CardSide => ({ ...EMPTY_SIDE, text });
const formula = (text: string): CardSide => side([{ text, role: "formula" }]);

/** One card on a page of its own size, without any marks but cut marks. */
async function print(prompt: CardSide, card = { width: 105, height: 74 }, note = "") {
  const cards = [{ ...kitCard(1, "", "answer", note), prompt }];
  const style = { title: "", mark: "none", language: "en" } as const;
  const kit = await printKit(kitPlan({ cards, style, card }), new Map());
  const pdf = readPdf(kit.pdf);
  try {
    return { ...kit, page: pdf.draw(1, DPI), text: pdf.pages[0] ?? "", complaints: pdf.complaints, info: pdf.info };
  } finally {
    pdf.close();
  }
}

/** Dots of a page that are black or nearly so, away from the cut marks: rows of each column that has any. */
function inkOf({ width, dots }: GreyPage, { left, right, top, bottom }: Readonly<Record<string, number>>) {
  const dot = (mm = 0) => Math.round((mm / 25.4) * DPI);
  const columns: { readonly x: number; readonly top: number; readonly bottom: number }[] = [];
  for (let x = dot(left); x < dot(right); x++) {
    const rows: number[] = [];
    for (let y = dot(top); y < dot(bottom); y++) if ((dots[y * width + x] ?? 255) < 128) rows.push(y);
    if (rows.length > 0) columns.push({ x, top: rows[0] ?? 0, bottom: rows.at(-1) ?? 0 });
  }
  return columns;
}

/** The card's middle, on the first slot of an A4 sheet of A7 cards. */
const INSIDE = { left: 5, right: 100, top: 8, bottom: 66 };

/** Strokes and rules, from left to right: columns that touch. */
function strokesOf(columns: ReturnType<typeof inkOf>) {
  const strokes: { from: number; to: number; top: number; bottom: number }[] = [];
  for (const { x, top, bottom } of columns) {
    const last = strokes.at(-1);
    if (last?.to !== x - 1) strokes.push({ from: x, to: x, top, bottom });
    else Object.assign(last, { to: x, top: Math.min(last.top, top), bottom: Math.max(last.bottom, bottom) });
  }
  return strokes;
}

describe("a formula in print", () => {
  it("stands on the base line of the words beside it, and reaches below as far as it is to", async () => {
    const { page, notices } = await print(
      side(formulaRuns("H\u00a0\\(\\rule{2em}{1em}\\rule[-0.5em]{1em}{1em}\\)\u00a0H")),
    );
    expect(notices).toEqual([]);
    const [before, rules, after] = strokesOf(inkOf(page, INSIDE));
    if (!before || !rules || !after) throw new Error("there should be a letter, rules and a letter");
    expect(Math.abs(before.bottom - after.bottom)).toBeLessThanOrEqual(DOTS);
    const columns = inkOf(page, INSIDE).filter(({ x }) => x >= rules.from && x <= rules.to);
    const [flat, deep] = [columns[5], columns.at(-5)];
    const em = (flat?.bottom ?? 0) - (flat?.top ?? 0);
    expect(Math.abs((flat?.bottom ?? 0) - before.bottom)).toBeLessThanOrEqual(DOTS);
    expect(Math.abs((deep?.bottom ?? 0) - before.bottom - em / 2)).toBeLessThanOrEqual(DOTS);
    // 20 points and a little more, at 300 dots an inch.
    expect(em).toBeGreaterThan((20 / 72) * DPI);
  });

  it("by itself is in the middle of the card", async () => {
    const columns = inkOf((await print(formula("\\rule{5em}{2em}"))).page, INSIDE);
    const middle = ((columns[0]?.x ?? 0) + (columns.at(-1)?.x ?? 0)) / 2;
    expect(Math.abs(middle - (52.5 / 25.4) * DPI)).toBeLessThanOrEqual(DOTS);
    const height = ((columns[0]?.top ?? 0) + (columns[0]?.bottom ?? 0)) / 2;
    // Four rows of 74 mm fill all but 1 mm of the sheet.
    expect(Math.abs(height - ((0.5 + 37) / 25.4) * DPI)).toBeLessThanOrEqual(DOTS);
  });

  it("becomes smaller on a smaller card, together with the words beside it", async () => {
    const prompt = side(formulaRuns("Law: \\(m - M = 5\\log_{10}\\left(\\frac{d}{10\\,\\mathrm{pc}}\\right)\\)"));
    const high = async (card: { readonly width: number; readonly height: number }) => {
      const { text, notices, page } = await print(prompt, card);
      expect(notices).toEqual([]);
      expect(text.replace(/\s+/g, " ")).toContain("Law: m - M");
      const [first] = strokesOf(inkOf(page, { left: 7, right: card.width - 7, top: 3, bottom: card.height - 3 }));
      return (first?.bottom ?? 0) - (first?.top ?? 0);
    };
    expect(await high({ width: 60, height: 30 })).toBeLessThan(0.8 * (await high({ width: 105, height: 74 })));
  });

  it("with a tail drives lines no further apart than a letter with a tail does", async () => {
    const high = async (text: string) => {
      const columns = inkOf((await print(side(formulaRuns(text)))).page, INSIDE);
      return Math.max(...columns.map(({ bottom }) => bottom)) - Math.min(...columns.map(({ top }) => top));
    };
    expect(Math.abs((await high("H\n\\(p\\) H\nH")) - (await high("H\np H\nH")))).toBeLessThanOrEqual(DOTS);
    expect(await high("H\n\\(\\frac{p}{q}\\) H\nH")).toBeGreaterThan((await high("H\np H\nH")) + DOTS);
  });

  it("that is too wide even in the smallest size is told", async () => {
    const sum = Array.from({ length: 40 }, (_, i) => `x_{${i}}`).join(" + ");
    expect((await print(formula(sum))).notices).toEqual([expect.stringContaining("cut off")]);
  });

  it("is found in the text of the page as it was written, in its place", async () => {
    const prompt = side(formulaRuns("Kepler: \\(T^2 \\propto a^3\\), for all."));
    const { text, complaints, info } = await print(prompt);
    expect(text.replace(/\s+/g, " ").trim()).toBe("Kepler: T^2 \\propto a^3, for all.");
    expect(complaints).toBe("");
    expect(info).toMatch(/^Tagged:\s+yes$/m);
  });

  it("is a formula, with its source in place of a picture, for those who hear the page", async () => {
    const { pdf } = await print(formula("T^2 \\propto a^3"));
    const document = await PDFDocument.load(pdf);
    const alts = document.context.enumerateIndirectObjects().flatMap(([, object]) => {
      if (!(object instanceof PDFDict) || object.lookup(PDFName.of("S")) !== PDFName.of("Formula")) return [];
      const alt = object.lookup(PDFName.of("Alt"));
      return alt instanceof PDFHexString || alt instanceof PDFString ? [alt.decodeText()] : [];
    });
    expect(alts).toEqual(["T^2 \\propto a^3"]);
  });

  it("that cannot be drawn is printed as it was written, and told", async () => {
    const { text, notices } = await print(formula("\\foo{x}"), undefined, "and \\(\\bar\\)");
    expect(text.trim()).toBe("\\foo{x}");
    expect(notices).toHaveLength(2);
    expect(notices[0]).toContain("\\foo{x}");
    expect(notices[1]).toContain("the notes on");
  });

  it("is marked where it is what was asked", async () => {
    const lowest = async (asked: boolean) => {
      const text = { text: "x", role: "formula", ...(asked ? { asked: true as const } : {}) } as const;
      const columns = inkOf((await print(side([text, { text: " is", role: "plain" }]))).page, INSIDE);
      return strokesOf(columns)[0]?.bottom ?? 0;
    };
    expect((await lowest(true)) - (await lowest(false))).toBeGreaterThan(DOTS);
  });
});
