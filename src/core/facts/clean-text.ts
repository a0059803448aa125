// How text from outside becomes text of ours: one normal form, one kind of line break, nothing invisible in it.

/** NFC, line breaks as LF, tabs as spaces, no control characters or lone surrogates, ends trimmed; markup stays text. */
export function cleanText(raw: string): string {
  const trimmed = raw.trim();
  if (/^[ -~]*$/.test(trimmed)) return trimmed;
  return trimmed
    .replace(/\r\n?|[\u2028\u2029]/g, "\n")
    .replace(/\t/g, " ")
    .replace(/[^\P{Cc}\n]/gu, "")
    .replace(/\p{Cs}/gu, "\ufffd")
    .normalize("NFC")
    .trim();
}
