import { PDFDocument } from "pdf-lib";
import { describe, expect, it } from "vitest";
import { kitCard as card } from "../../tests/support/kit-plan.ts";
import { readPdf } from "../../tests/support/pdf-tools.ts";
import { DPI, reading } from "../../tests/support/printed-kit.ts";
import { textItem } from "../core/kit/page.ts";
import { silenceMarks } from "./silence-marks.ts";
import { typesetKit } from "./typeset.ts";

/** Vega, Altair, Deneb, Fomalhaut, Spica and "the moon tonight": letters with one, two and three dots, above and below. */
const ARABIC = ["النسر الواقع", "النسر الطائر", "ذنب الدجاجة", "فم الحوت", "السماك الأعزل", "القمر في هذه الليلة"];

describe("text with dotted letters", () => {
  it.each([...ARABIC, "ดาวปี่ ฟ้า น้ำ"])("“%s” is copied as it was written", async (text) => {
    await reading({ cards: [card(1, text, "Vega")] }, (pdf) => {
      expect(pdf.complaints).toBe("");
      expect(pdf.seen[0]?.split("\n")).toContain(text);
    });
  });

  it("is copied with words in other letters and numbers between", async () => {
    await reading({ cards: [card(1, "نجم Vega يبعد 25 سنة ضوئية", "x")] }, (pdf) => {
      // Where direction changes the reader's blanks are not ours.
      for (const word of ["نجم", "Vega", "يبعد", "25", "سنة", "ضوئية"]) expect(pdf.seen[0]).toContain(word);
    });
  });

  it("looks the same, dot for dot, as the engine drew it", async () => {
    const text = ARABIC.join(" ");
    const item = textItem({ x: 10, y: 10, width: 80, height: 80 }, text, { language: "ar", direction: "rtl" });
    const pages = [{ width: 100, height: 100, items: [item] }];
    const { pdf } = typesetKit({ title: "Stars", language: "en", pages, pictures: new Map() });
    const document = await PDFDocument.load(pdf, { updateMetadata: false });
    silenceMarks(document);
    const silenced = await document.save({ useObjectStreams: false });
    const [before, after] = [readPdf(pdf), readPdf(silenced)];
    try {
      expect(Buffer.from(silenced).equals(Buffer.from(pdf))).toBe(false);
      expect(Buffer.from(after.draw(1, DPI).dots).equals(Buffer.from(before.draw(1, DPI).dots))).toBe(true);
    } finally {
      before.close();
      after.close();
    }
  });

  it("is left alone in scripts without such marks", async () => {
    const pages = [
      { width: 100, height: 100, items: [textItem({ x: 10, y: 10, width: 80, height: 80 }, "Déneb, Véga")] },
    ];
    const { pdf } = typesetKit({ title: "Stars", language: "en", pages, pictures: new Map() });
    const document = await PDFDocument.load(pdf, { updateMetadata: false });
    const before = await document.save({ useObjectStreams: false });
    silenceMarks(document);
    expect(Buffer.from(await document.save({ useObjectStreams: false })).equals(Buffer.from(before))).toBe(true);
  });
});
