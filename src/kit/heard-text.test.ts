import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, type PDFObject } from "pdf-lib";
import { describe, expect, it } from "vitest";
import { kitCard as card, kitPlan as plan } from "../../tests/support/kit-plan.ts";
import { KIT_PARTS, type KitPlan } from "../core/kit/kit-pages.ts";
import { printKit } from "./print-kit.ts";

/** The texts that a PDF tells in place of pieces, in the order of its structure. */
async function toldBy(more: Partial<KitPlan>): Promise<readonly string[]> {
  const { pdf } = await printKit(plan(more), new Map());
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const told: string[] = [];
  const visit = (object: PDFObject | undefined): void => {
    const element = document.context.lookup(object);
    if (element instanceof PDFArray) for (const one of element.asArray()) visit(one);
    if (!(element instanceof PDFDict)) return;
    const text = element.get(PDFName.of("ActualText"));
    if (text instanceof PDFHexString) told.push(text.decodeText());
    visit(element.get(PDFName.of("K")));
  };
  visit(document.catalog.get(PDFName.of("StructTreeRoot")));
  return told;
}

describe("text from right to left", () => {
  it.each(["long", "fold"] as const)(
    "is heard as it was written, among everything else of a kit turned %s",
    async (turn) => {
      const cards = [
        card(1, "النسر الواقع", "Vega", "كوكبة القيثارة"),
        card(2, "Which planet is שבתאי?", "Saturn"),
        card(3, "Second planet", "Venus"),
        card(4, "织女星", "ध्रुव तारा"),
      ];
      const style = { title: "السماء ليلا", mark: "both", language: "en" } as const;
      const told = await toldBy({ turn, cards, style, parts: new Set(KIT_PARTS) });
      const above = style.title;
      const fronts = ["النسر الواقع", above, "Which planet is שבתאי?", above, above, above];
      expect(told).toEqual([...fronts, "كوكبة القيثارة", above, above, above, above]);
    },
  );

  it("is not told of text from left to right", async () => {
    expect(await toldBy({ cards: [card(1, "Brightest star of Lyra", "Vega")] })).toEqual([]);
  });
});
