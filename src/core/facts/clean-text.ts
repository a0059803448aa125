// How text from outside becomes text of ours: one normal form, one kind of line break, nothing invisible in it that
// could mislead.
import { settleBidi } from "../text/bidi-controls.ts";

/** NFC, line breaks as LF, tabs as spaces, no control characters or lone surrogates, directions of writing in order, ends trimmed; markup stays text. */
export function cleanText(raw: string): string {
  const trimmed = raw.trim();
  if (/^[ -~]*$/.test(trimmed)) return trimmed;
  const plain = trimmed
    .replace(/\r\n?|[\u2028\u2029]/g, "\n")
    .replace(/\t/g, " ")
    .replace(/[^\P{Cc}\n]/gu, "")
    .replace(/\p{Cs}/gu, "\ufffd");
  return settleBidi(plain).normalize("NFC").trim();
}
