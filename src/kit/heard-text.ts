// Text from right to left as it is heard.
//
// The engine writes the pieces of such a line as they stand on the page, from left to right, so that a program that
// reads aloud would begin with the last word. The text as it was written is told beside them (PDF 2.0, 14.9.4).
import { PDFArray, PDFDict, type PDFDocument, PDFHexString, PDFName } from "pdf-lib";
import type { KitPage, PageItem, TextItem } from "../core/kit/page.ts";

/** Adds it to the elements of a document's structure, which must be those of these pages; others are left alone. */
export function tellHeardText(document: PDFDocument, pages: readonly KitPage[]): void {
  const items = pages.flatMap((page) => page.items).filter(isHeard);
  if (!items.some(needsTelling)) return;
  const elements = elementsOf(document);
  const same =
    elements.length === items.length && items.every((item, i) => isTextElement(elements[i]) === isText(item));
  if (!same) return;
  for (const [i, item] of items.entries())
    if (needsTelling(item)) elements[i]?.set(PDFName.of("ActualText"), PDFHexString.fromText(writtenText(item)));
}

const isText = (item: PageItem): item is TextItem => item.kind === "text";
const writtenText = (item: TextItem): string => item.runs.map(({ text }) => text).join("");

const isHeard = (item: PageItem): boolean =>
  isText(item) ? writtenText(item).trim() !== "" : item.kind === "picture" || item.kind === "code";

const needsTelling = (item: PageItem): item is TextItem =>
  isText(item) &&
  /[\p{Script=Arabic}\p{Script=Hebrew}]/u.test(writtenText(item)) &&
  item.runs.every(({ look }) => look !== "formula");

/** What is right below the whole document. */
function elementsOf(document: PDFDocument): readonly PDFDict[] {
  const root = document.catalog.lookupMaybe(PDFName.of("StructTreeRoot"), PDFDict);
  const [whole] = childrenOf(root);
  return childrenOf(whole);
}

function childrenOf(element: PDFDict | undefined): readonly PDFDict[] {
  const children = element?.lookup(PDFName.of("K"));
  if (children instanceof PDFDict) return [children];
  if (!(children instanceof PDFArray)) return [];
  return Array.from({ length: children.size() }, (_, i) => children.lookup(i)).filter((one) => one instanceof PDFDict);
}

const isTextElement = (element: PDFDict | undefined): boolean => element?.get(PDFName.of("S")) !== PDFName.of("Figure");
