// Text that is copied out of a PDF as it was written, where glyphs of one letter are drawn apart.
//
// Fonts for Arabic draw a dotted letter as its body and its dots. The engine draws dots that are moved up or down as a
// text of their own, and every glyph carries the whole text of its letter, so that copied letters come out doubled. The
// glyph without a width is made silent: its replacement text is empty (PDF 2.0, 14.9.4), and for readers that know
// no replacement text it means U+034F, which is never shown, instead of the letter.
import { deflateSync } from "node:zlib";
import {
  decodePDFRawStream,
  PDFArray,
  type PDFContext,
  PDFDict,
  type PDFDocument,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
} from "pdf-lib";

/** Glyphs of a font that stand on a letter and have no width. */
type Marks = ReadonlySet<number>;

const JOINER = "<034F>";

/** Makes the marks of all fonts silent; letters keep their text. A PDF without such marks stays as it is. */
export function silenceMarks(document: PDFDocument): void {
  const { context } = document;
  const marks = new Map<PDFRef, Marks>();
  for (const [ref, font] of context.enumerateIndirectObjects())
    if (font instanceof PDFDict && font.get(PDFName.of("Subtype")) === PDFName.of("Type0")) {
      const silenced = silenceFont(context, font);
      if (silenced.size > 0) marks.set(ref, silenced);
    }
  if (marks.size === 0) return;
  for (const page of document.getPages()) {
    const byName = new Map<string, Marks>();
    for (const [name, ref] of page.node.Resources()?.lookupMaybe(PDFName.of("Font"), PDFDict)?.entries() ?? [])
      if (ref instanceof PDFRef && marks.has(ref)) byName.set(name.decodeText(), marks.get(ref) as Marks);
    const content = page.node.get(PDFName.of("Contents"));
    if (byName.size > 0 && content instanceof PDFRef) editStream(context, content, (text) => silenceText(text, byName));
  }
}

/** Lets the marks of a font mean nothing, and tells which they are. */
function silenceFont(context: PDFContext, font: PDFDict): Marks {
  const silenced = new Set<number>();
  const toUnicode = font.get(PDFName.of("ToUnicode"));
  if (!(toUnicode instanceof PDFRef)) return silenced;
  const wide = wideGlyphs(font);
  editStream(context, toUnicode, (map) =>
    map.replace(/^<([0-9A-F]{4})> <([0-9A-F]+)>$/gm, (pair, glyph: string, text: string) => {
      const number = Number.parseInt(glyph, 16);
      if (wide.has(number) || !/[\p{L}\p{N}]/u.test(utf16(text))) return pair;
      silenced.add(number);
      return `<${glyph}> ${JOINER}`;
    }),
  );
  return silenced;
}

const utf16 = (hex: string): string =>
  String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((unit) => Number.parseInt(unit, 16)));

/** Glyphs with a width: ranges "first last width" or lists "first [widths]" (PDF 2.0, 9.7.4.3). */
function wideGlyphs(font: PDFDict): ReadonlySet<number> {
  const wide = new Set<number>();
  const descendant = font.lookup(PDFName.of("DescendantFonts"), PDFArray).lookup(0, PDFDict);
  const widths = descendant.lookupMaybe(PDFName.of("W"), PDFArray)?.asArray() ?? [];
  const at = (i: number): number => (widths[i] instanceof PDFNumber ? widths[i].asNumber() : 0);
  for (let i = 0; i + 1 < widths.length; ) {
    const list = widths[i + 1];
    if (list instanceof PDFArray) {
      for (const [n, width] of list.asArray().entries())
        if (width instanceof PDFNumber && width.asNumber() !== 0) wide.add(at(i) + n);
      i += 2;
    } else {
      if (at(i + 2) !== 0) for (let glyph = at(i); glyph <= at(i + 1); glyph++) wide.add(glyph);
      i += 3;
    }
  }
  return wide;
}

function editStream(context: PDFContext, ref: PDFRef, edit: (text: string) => string): void {
  const stream = context.lookup(ref);
  if (!(stream instanceof PDFRawStream)) return;
  const text = Buffer.from(decodePDFRawStream(stream).decode()).toString("latin1");
  const edited = edit(text);
  if (edited === text) return;
  const dict = stream.dict.clone(context);
  dict.set(PDFName.of("Filter"), PDFName.of("FlateDecode"));
  context.assign(ref, PDFRawStream.of(dict, new Uint8Array(deflateSync(Buffer.from(edited, "latin1")))));
}

/** One text as the engine writes it: perhaps its replacement, its look, and one string of glyphs. Any other stays as it is. */
const DRAWN =
  /\nBT\n(?:\/Span <<\n {2}\/ActualText [^\n]*\n>> BDC\n)?(?:\/ReversedChars BMC\n)?(\d Tr\n\/(\S+) [\d.]+ Tf\n[^\n]* Tm\n([^\n]*) T[jJ])(?:\nEMC)*\nET\n/g;

const silenceText = (content: string, marks: ReadonlyMap<string, Marks>): string =>
  content.replace(DRAWN, (whole, drawing: string, font: string, shown: string) => {
    const glyphs = glyphsOf(shown);
    const silent = glyphs.length > 0 && glyphs.every((glyph) => marks.get(font)?.has(glyph));
    return silent ? `\nBT\n/Span <<\n  /ActualText ()\n>> BDC\n${drawing}\nEMC\nET\n` : whole;
  });

/** The glyphs, two bytes each, of the strings in the operand of Tj or TJ (PDF 2.0, 7.3.4.2). */
function glyphsOf(shown: string): readonly number[] {
  const bytes: number[] = [];
  let depth = 0;
  for (const [token, octal, escaped] of shown.matchAll(/\\([0-7]{1,3})|\\(.)|[\s\S]/g)) {
    if (depth === 0) depth = token === "(" ? 1 : 0;
    else if (octal !== undefined) bytes.push(Number.parseInt(octal, 8));
    else if (escaped !== undefined) bytes.push((ESCAPES[escaped] ?? escaped).charCodeAt(0));
    else {
      depth += token === "(" ? 1 : token === ")" ? -1 : 0;
      if (depth > 0) bytes.push(token.charCodeAt(0));
    }
  }
  return Array.from({ length: bytes.length >> 1 }, (_, i) => ((bytes[2 * i] ?? 0) << 8) | (bytes[2 * i + 1] ?? 0));
}

const ESCAPES: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };
