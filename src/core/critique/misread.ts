// Letters that came out of a wrong encoding, read again. Bytes of UTF-8 that were taken for windows-1252 leave pairs
// such as Ã¶; but the second half of such a pair can also stand behind an accented letter by right, as in « été ».

/** Bytes of UTF-8 read as windows-1252, after the WHATWG Encoding Standard; 0x80 to 0x9F. */
const MIDDLE = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";
const MISREAD = new RegExp(`[\u00c2-\u00f4][\u0080-\u00bf${MIDDLE}]{1,3}`, "gu");

/** Signs that may follow a word: blanks, quotation marks, dashes, small signs. */
const BY_RIGHT = /^[\u00a0\u00ad«»“”‘’‚„‹›–—…•·°®©™²³¹ªº½¼¾]+$/u;
/** Of these, the ones that do not stand inside a word. */
const OUTSIDE_A_WORD = /^[«»“”‚„‹›]$/u;

/** A first letter, what follows it as the rest of one character, and what they were meant to be. */
interface Stretch {
  readonly lead: string;
  readonly rest: string;
  readonly meant: string;
  readonly after: string;
}

/** The text with its characters put together again; as it is, unless one of them can hardly have been meant. */
export function readAgain(text: string): string {
  let convinced = false;
  const read = text.replace(MISREAD, (signs, at: number) => {
    const stretch = decode(signs, text.slice(at + signs.length, at + signs.length + 1));
    if (!stretch) return signs;
    convinced ||= isMisread(stretch, text.slice(0, at).slice(-1));
    return stretch.meant + signs.slice(1 + stretch.rest.length);
  });
  return convinced ? read : text;
}

/** Whether a stretch can hardly have been meant as it stands. */
function isMisread({ lead, rest, after }: Stretch, before: string): boolean {
  if (!BY_RIGHT.test(rest)) return true;
  if (!/\p{Lu}/u.test(lead)) return false;
  if (/\p{Ll}/u.test(before)) return true;
  if (/[ÃÂ]/u.test(lead)) return /\p{L}/u.test(after) || !/[\p{Lu}\p{Ps}\p{Pi}"„]/u.test(before);
  return OUTSIDE_A_WORD.test(rest) && /\p{Ll}/u.test(after);
}

/** The character at the beginning, if the signs are the bytes of one. */
function decode(signs: string, next: string): Stretch | null {
  const bytes = [...signs].map((letter) => {
    const at = MIDDLE.indexOf(letter);
    return at >= 0 ? 0x80 + at : letter.charCodeAt(0);
  });
  const [first = 0] = bytes;
  const more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : 1;
  const following = bytes.slice(1, more + 1);
  if (following.length < more || following.some((byte) => byte < 0x80 || byte > 0xbf)) return null;
  const head = first & (more === 3 ? 0x07 : more === 2 ? 0x0f : 0x1f);
  const point = following.reduce((sum, byte) => sum * 64 + (byte & 0x3f), head);
  const least = [0, 0xa0, 0x800, 0x10000][more] ?? 0;
  if (point < least || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) return null;
  const rest = signs.slice(1, more + 1);
  return { lead: signs.slice(0, 1), rest, meant: String.fromCodePoint(point), after: signs.slice(more + 1) || next };
}
