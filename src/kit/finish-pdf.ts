// What the engine cannot write into a PDF: the pictures themselves, where a page is cut, text that is copied as it was
// written, and what the print window should choose: both sides, which edge, and never to scale.
import { inflateSync } from "node:zlib";
import { Duplex, PDFBool, PDFDict, PDFDocument, PDFName, PDFRawStream, PrintScaling } from "pdf-lib";
import type { Turn } from "../core/kit/impose.ts";
import type { KitPage } from "../core/kit/page.ts";
import { tellHeardText } from "./heard-text.ts";
import type { PreparedPicture } from "./prepare-pictures.ts";
import { silenceMarks } from "./silence-marks.ts";

const DUPLEX: Readonly<Record<Turn, Duplex>> = {
  long: Duplex.DuplexFlipLongEdge,
  short: Duplex.DuplexFlipShortEdge,
  fold: Duplex.Simplex,
};

const POINTS = 72 / 25.4;

/** What a PDF is finished with; `pictures` are in the order in which they were prepared. */
export interface Finish {
  readonly turn: Turn;
  readonly pages: readonly KitPage[];
  readonly pictures: readonly PreparedPicture[];
}

/** The PDF with all that; everything else stays, and the same bytes come out for the same bytes. */
export async function finishPdf(pdf: Uint8Array, { turn, pages, pictures }: Finish): Promise<Uint8Array> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  putPictures(document, pictures);
  silenceMarks(document);
  tellHeardText(document, pages);
  for (const [i, { bleed = 0 }] of pages.entries()) if (bleed > 0) setBoxes(document, i, bleed * POINTS);
  const preferences = document.catalog.getOrCreateViewerPreferences();
  preferences.setDuplex(DUPLEX[turn]);
  preferences.setPrintScaling(PrintScaling.None);
  // "No suspects" is what its absence means too, and poppler before 23 complains about the plain "false".
  const marks = document.catalog.lookupMaybe(PDFName.of("MarkInfo"), PDFDict);
  if (marks?.lookup(PDFName.of("Suspects")) === PDFBool.False) marks.delete(PDFName.of("Suspects"));
  return document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false });
}

/** A page that is one card is printed to its edge and cut to the card (PDF 2.0, 14.11.2). */
function setBoxes(document: PDFDocument, index: number, bleed: number): void {
  const page = document.getPage(index);
  const { x, y, width, height } = page.getMediaBox();
  page.setBleedBox(x, y, width, height);
  page.setTrimBox(x + bleed, y + bleed, width - 2 * bleed, height - 2 * bleed);
}

/** Puts every picture in the place of its stand-in, which tells its number by its colour. */
function putPictures(document: PDFDocument, pictures: readonly PreparedPicture[]): void {
  const { context } = document;
  for (const [ref, object] of context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream) || object.dict.lookup(PDFName.of("Subtype")) !== PDFName.of("Image"))
      continue;
    const [high = 0, middle = 0, low = 0] = inflateSync(object.contents);
    const picture = pictures[(high << 16) | (middle << 8) | low];
    if (!picture) throw new Error("the engine wrote a picture that was not given to it");
    const colours = object.dict.get(PDFName.of("ColorSpace"));
    const { form, bytes, width, height } = picture;
    const shape = { Type: "XObject", Subtype: "Image", Width: width, Height: height, BitsPerComponent: 8 };
    const rows = { Predictor: 15, Colors: 3, BitsPerComponent: 8, Columns: width };
    const packing = form === "jpeg" ? { Filter: "DCTDecode" } : { Filter: "FlateDecode", DecodeParms: rows };
    const dict = context.obj({ ...shape, ...packing, ...(colours ? { ColorSpace: colours } : {}) });
    context.assign(ref, PDFRawStream.of(dict, bytes));
  }
}
