// What a PDF tells the print window: both sides, which edge, and never to scale.
import { Duplex, PDFBool, PDFDict, PDFDocument, PDFName, PrintScaling } from "pdf-lib";
import type { Turn } from "../core/kit/impose.ts";

const DUPLEX: Readonly<Record<Turn, Duplex>> = {
  long: Duplex.DuplexFlipLongEdge,
  short: Duplex.DuplexFlipShortEdge,
  fold: Duplex.Simplex,
};

/** The PDF with these hints; everything else stays, and the same bytes come out for the same bytes. */
export async function addPrintHints(pdf: Uint8Array, turn: Turn): Promise<Uint8Array> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const preferences = document.catalog.getOrCreateViewerPreferences();
  preferences.setDuplex(DUPLEX[turn]);
  preferences.setPrintScaling(PrintScaling.None);
  // "No suspects" is what its absence means too, and poppler before 23 complains about the plain "false".
  const marks = document.catalog.lookupMaybe(PDFName.of("MarkInfo"), PDFDict);
  if (marks?.lookup(PDFName.of("Suspects")) === PDFBool.False) marks.delete(PDFName.of("Suspects"));
  return document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false });
}
