// Text as it can stand in a PDF. What people paste holds characters that are no text.

/**
 * The text with U+FFFD in place of lone surrogates, controls and non-characters. The separators of lines and paragraphs
 * would be set as breaks that stretch a line, and become line breaks; the byte order mark, which PDF/UA-1 (ISO 14289-1,
 * 7.21.7) forbids with U+0000 and U+FFFE, becomes the word joiner that took over its meaning.
 */
export const printableText = (text: string): string =>
  text
    .replace(/\r\n?|[\u2028\u2029]/g, "\n")
    .replace(/\ufeff/g, "\u2060")
    .replace(/(?![\n\t])\p{Cc}|\p{Cs}|\p{Noncharacter_Code_Point}/gu, "\ufffd");
