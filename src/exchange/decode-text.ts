// From the bytes of somebody's file to text. Lists come from spreadsheets, old word lists and pastes, so
// the encoding is worked out here: byte order mark, zero bytes, valid UTF-8, and windows-1252 as the last guess.

/** The encodings in which a list can be read. */
export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** Text with the encoding it was read in; `replaced` counts the places where bytes made no sense and became U+FFFD. */
export interface DecodedText {
  readonly text: string;
  readonly encoding: Encoding;
  readonly replaced: number;
}

const BYTE_ORDER_MARKS: readonly { readonly encoding: Encoding; readonly bytes: readonly number[] }[] = [
  { encoding: "utf-8", bytes: [0xef, 0xbb, 0xbf] },
  { encoding: "utf-16le", bytes: [0xff, 0xfe] },
  { encoding: "utf-16be", bytes: [0xfe, 0xff] },
];

/** How much of a file is looked at to recognise UTF-16. */
const SAMPLE_BYTES = 8192;

/** The characters of the bytes 0x80 to 0x9F in windows-1252, after the WHATWG Encoding Standard's index. */
const WINDOWS_1252_MIDDLE =
  "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f" +
  "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";

/** Reads any bytes as text and never fails; `forced` overrules the guess. A byte order mark is not part of the text. */
export function decodeText(bytes: Uint8Array, forced?: Encoding): DecodedText {
  const mark = BYTE_ORDER_MARKS.find((candidate) => candidate.bytes.every((byte, i) => bytes[i] === byte));
  const body = mark ? bytes.subarray(mark.bytes.length) : bytes;
  const settled = forced ?? mark?.encoding ?? recogniseUtf16(body);
  if (settled) return decodeAs(body, settled);
  const utf8 = decodeAs(body, "utf-8");
  return utf8.replaced === 0 || isDamagedUtf8(utf8) ? utf8 : decodeAs(body, "windows-1252");
}

function decodeAs(bytes: Uint8Array, encoding: Encoding): DecodedText {
  if (encoding === "windows-1252") return { text: decodeWindows1252(bytes), encoding, replaced: 0 };
  const strict = tryDecode(bytes, encoding);
  if (strict !== null) return { text: strict, encoding, replaced: 0 };
  const text = new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes);
  // A U+FFFD that was written in the file is text like any other, not damage.
  return { text, encoding, replaced: countReplacements(text) - writtenReplacements(bytes, encoding) };
}

function tryDecode(bytes: Uint8Array, encoding: Encoding): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Done by hand: some releases of Node 20 and 22 decode the middle range as if it were ISO 8859-1. */
function decodeWindows1252(bytes: Uint8Array): string {
  const latin1 = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
  return latin1.replace(/[\u0080-\u009f]/g, (c) => WINDOWS_1252_MIDDLE[c.charCodeAt(0) - 0x80] as string);
}

function countReplacements(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\ufffd"); at >= 0; at = text.indexOf("\ufffd", at + 1)) count++;
  return count;
}

/** How often the bytes spell U+FFFD itself. Neither encoding can have these bytes inside another character. */
function writtenReplacements(bytes: Uint8Array, encoding: Encoding): number {
  const [first, second, third] =
    encoding === "utf-8" ? [0xef, 0xbf, 0xbd] : encoding === "utf-16le" ? [0xfd, 0xff] : [0xff, 0xfd];
  let count = 0;
  for (let i = 0; i + 1 < bytes.length; i += encoding === "utf-8" ? 1 : 2) {
    if (bytes[i] === first && bytes[i + 1] === second && (third === undefined || bytes[i + 2] === third)) count++;
  }
  return count;
}

/** Zero bytes on one side of every pair give UTF-16 away; so does text that is clean only when read so. */
function recogniseUtf16(bytes: Uint8Array): Encoding | null {
  const sample = bytes.subarray(0, Math.min(bytes.length, SAMPLE_BYTES) & ~1);
  let even = 0;
  let odd = 0;
  for (let i = 0; i + 1 < sample.length; i += 2) {
    if (sample[i] === 0) even++;
    if (sample[i + 1] === 0) odd++;
  }
  if (even === 0 && odd === 0) return null;
  const encoding = odd > even ? "utf-16le" : "utf-16be";
  const pairs = sample.length / 2;
  const most = Math.max(even, odd);
  const least = Math.min(even, odd);
  if (most * 4 >= pairs && least * 4 <= most) return encoding;
  return least === 0 && isCleanUtf16(sample, encoding) ? encoding : null;
}

/** For scripts whose letters have no zero bytes: line ends and no control characters, which chance hardly gives. */
function isCleanUtf16(sample: Uint8Array, encoding: Encoding): boolean {
  const { text, replaced } = decodeAs(sample, encoding);
  // One character may have been cut in two by the end of the sample.
  return replaced <= 1 && /[\n\r]/u.test(text) && !/[^\P{Cc}\t\n\r]/u.test(text);
}

/** UTF-8 with a few broken places (a file cut off, say) has far more whole characters than broken ones. */
function isDamagedUtf8({ text, replaced }: DecodedText): boolean {
  const beyondAscii = text.match(/[^\p{ASCII}]/gu)?.length ?? 0;
  return beyondAscii - replaced > replaced;
}
