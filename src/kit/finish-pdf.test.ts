import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { kitCard as card, kitPlan as plan, cardSize as size } from "../../tests/support/kit-plan.ts";
import type { GreyPage } from "../../tests/support/pdf-tools.ts";
import { blackSquare, DOT, DPI, reading } from "../../tests/support/printed-kit.ts";
import type { PictureRecord } from "../app/ports.ts";
import { EMPTY_SIDE } from "../core/cards/cards.ts";
import { impose } from "../core/kit/impose.ts";
import { SHEETS, type Size } from "../core/kit/paper.ts";
import { finishPdf } from "./finish-pdf.ts";
import { printKit } from "./print-kit.ts";

describe("a picture that fills a side", () => {
  const style = { title: "", mark: "none", language: "en" } as const;
  /** Black in the form of an A7 card. */
  const wide = async (): Promise<PictureRecord> => {
    const bytes = await sharp({ create: { width: 1050, height: 740, channels: 3, background: "#000" } })
      .jpeg()
      .toBuffer();
    return { hash: "black", mime: "image/jpeg", width: 1050, height: 740, bytes: new Uint8Array(bytes) };
  };
  const cards = [{ ...card(1, "Vega", ""), answer: { ...EMPTY_SIDE, picture: "black" } }];
  /** How far the black of a page goes in millimetres: left, top, right, bottom. */
  const reach = ({ width, dots }: GreyPage): readonly number[] => {
    const [xs, ys] = [new Set<number>(), new Set<number>()];
    for (const [at, dot] of dots.entries())
      if (dot < 60) {
        xs.add(at % width);
        ys.add(Math.floor(at / width));
      }
    const [x, y] = [[...xs].sort((a, b) => a - b), [...ys].sort((a, b) => a - b)];
    return [x[0] ?? 0, y[0] ?? 0, (x.at(-1) ?? 0) + 1, (y.at(-1) ?? 0) + 1].map((dot) => dot * DOT);
  };

  it("runs past the cut by as much as it should, on every side", async () => {
    const black = await wide();
    await reading(
      { cards, style, bleed: 2 },
      (pdf) => {
        const laid = impose(SHEETS.a4 as Size, size("a7"), "long", 2);
        const back = laid.ok ? laid.value.backs[0] : undefined;
        const [left = 0, top = 0, right = 0, bottom = 0] = reach(pdf.draw(2, DPI));
        const edges = [left - (back?.x ?? 0), top - (back?.y ?? 0), right - left - 105, bottom - top - 74];
        for (const [i, past] of [-2, -2, 4, 4].entries())
          expect(Math.abs((edges[i] ?? 0) - past)).toBeLessThan(2 * DOT);
      },
      new Map([["black", black]]),
    );
  });

  it("goes to the edge of a page that is one card, which says where it is cut", async () => {
    const black = await wide();
    await reading(
      { cards, style, bleed: 3, sheet: size("a7") },
      (pdf) => {
        const { width, height, dots } = pdf.draw(2, 100);
        // The last row and column of dots lie on the page only in part: 437.008 × 314.961 dots.
        const last = (height - 2) * width;
        for (const at of [0, width - 2, last, last + width - 2]) expect(dots[at]).toBeLessThan(60);
        expect(height / width).toBeCloseTo(80 / 111, 2);
        // 3 mm are 8.504 points; A7 is 297.638 × 209.764 points.
        expect(pdf.info).toMatch(/Page +2 TrimBox: +8\.50 +8\.50 +306\.14 +218\.27/);
        expect(pdf.info).toMatch(/Page +2 BleedBox: +0\.00 +0\.00 +314\.65 +226\.77/);
      },
      new Map([["black", black]]),
    );
  });
});

describe("a finished PDF", () => {
  it("says that it can be heard, and what a picture shows, as the engine wrote it", async () => {
    const square = await blackSquare();
    const shown = { ...card(1042, "", "Vega"), prompt: { ...EMPTY_SIDE, picture: "black" }, pictureAlt: "A dark sky" };
    await reading(
      { cards: [shown], bleed: 2 },
      (pdf) => {
        expect(pdf.complaints).toBe("");
        expect(pdf.metadata).toContain("<pdfuaid:part>1</pdfuaid:part>");
        expect(pdf.structure).toMatch(/^ +Figure/m);
      },
      new Map([["black", square]]),
    );
    const { pdf } = await printKit(plan({ cards: [shown], bleed: 2 }), new Map([["black", square]]));
    expect(Buffer.from(pdf).toString("latin1")).toContain("/Alt (A dark sky)");
  });

  it("is refused if it holds a picture that was not given to be put in", async () => {
    const square = await blackSquare();
    const cards = [{ ...card(1, "", "Vega"), prompt: { ...EMPTY_SIDE, picture: "black" } }];
    const { pdf } = await printKit(plan({ cards }), new Map([["black", square]]));
    await expect(finishPdf(pdf, { turn: "long", pages: [], pictures: [] })).rejects.toThrow("not given");
  });
});
