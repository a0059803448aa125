// Damage that text takes on its way from program to program, and its repair where that is certain.

/** What is wrong with a text, in words, and the text without it. */
export interface Mended {
  readonly text: string;
  readonly damage: readonly string[];
}

interface Repair {
  readonly damage: string;
  readonly mend: (text: string, language: string) => string;
}

/** Bytes of UTF-8 read as windows-1252, after the WHATWG Encoding Standard; 0x80 to 0x9F. */
const MIDDLE = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";
const MISREAD = new RegExp(`[\u00c2-\u00f4][\u0080-\u00bf${MIDDLE}]{1,3}`, "gu");

/** Letters of other alphabets that look like Latin ones. */
const LOOKALIKES: Readonly<Record<string, string>> = Object.fromEntries(
  [..."АВЕКМНОРСТХаеорсухіјѕΑΒΕΖΗΙΚΜΝΟΡΤΥΧο"].map((letter, i) => [
    letter,
    [..."ABEKMHOPCTXaeopcyxijsABEZHIKMNOPTYXo"][i] ?? letter,
  ]),
);

const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: " ",
  ndash: "–",
  mdash: "—",
  hellip: "…",
  deg: "°",
  auml: "ä",
  ouml: "ö",
  uuml: "ü",
  Auml: "Ä",
  Ouml: "Ö",
  Uuml: "Ü",
  szlig: "ß",
  eacute: "é",
  egrave: "è",
  agrave: "à",
  ccedil: "ç",
  ntilde: "ñ",
};
const ENTITY = /&(?:([a-zA-Z]{2,6})|#(\d{2,6})|#x([0-9a-fA-F]{2,5}));/gu;

const REPAIRS: readonly Repair[] = [
  { damage: "letters were read in the wrong encoding", mend: readAgain },
  { damage: "it holds signs of a web page, such as &amp;", mend: decodeEntities },
  {
    damage: "it holds tags of a web page",
    mend: (text) =>
      text.replace(/<\/?(?:b|i|u|p|br|div|span|font|em|strong|sub|sup|li|ul|ol)(?:\s[^<>]*)?\/?>/giu, " "),
  },
  { damage: "letters of two alphabets are mixed in one word", mend: unmix },
  { damage: "an accent stands for an apostrophe", mend: (text) => text.replace(/(?<=\p{L})[´`](?=\p{L})/gu, "’") },
  { damage: "letters and their accents are not joined (NFC)", mend: (text) => text.normalize("NFC") },
  {
    damage: "it holds signs that cannot be seen",
    mend: (text) => text.replace(/[\u200b\u2060\ufeff\u00ad\u202a-\u202e\u2066-\u2069]/gu, ""),
  },
  { damage: "a blank stands before a sign or twice", mend: tidyBlanks },
];

/** Damage that cannot be undone by rule. */
const LOST = /\ufffd|\?{3,}|□/u;

/** The text mended, and what was wrong. `language` by its ISO 639-1 code; empty if it is not known. */
export function mendText(text: string, language: string): Mended {
  const damage: string[] = [];
  let mended = text;
  for (const repair of REPAIRS) {
    const next = repair.mend(mended, language);
    if (next !== mended) damage.push(repair.damage);
    mended = next;
  }
  if (LOST.test(text)) damage.push("letters are lost");
  return { text: mended, damage };
}

/** Only where every stretch gives whole characters: a text that merely holds such letters stays. */
function readAgain(text: string): string {
  return text.replace(MISREAD, (stretch) => {
    const bytes = [...stretch].map((letter) => {
      const at = MIDDLE.indexOf(letter);
      return at >= 0 ? 0x80 + at : letter.charCodeAt(0);
    });
    return decodeUtf8(bytes) ?? stretch;
  });
}

/** One character from the bytes at the beginning, the others as they were; null if they are none. */
function decodeUtf8(bytes: readonly number[]): string | null {
  const [first = 0] = bytes;
  const more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : 1;
  if (bytes.length < more + 1 || bytes.slice(1, more + 1).some((byte) => byte < 0x80 || byte > 0xbf)) return null;
  const head = first & (more === 3 ? 0x07 : more === 2 ? 0x0f : 0x1f);
  const point = bytes.slice(1, more + 1).reduce((sum, byte) => sum * 64 + (byte & 0x3f), head);
  const least = [0, 0x80, 0x800, 0x10000][more] ?? 0;
  if (point < least || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) return null;
  const rest = bytes
    .slice(more + 1)
    .map((byte) => (byte < 0xa0 ? (MIDDLE[byte - 0x80] ?? "") : String.fromCharCode(byte)));
  return String.fromCodePoint(point) + rest.join("");
}

function decodeEntities(text: string): string {
  return text.replace(ENTITY, (whole, name?: string, decimal?: string, hex?: string) => {
    if (name !== undefined) return ENTITIES[name] ?? whole;
    const point = decimal === undefined ? Number.parseInt(hex ?? "", 16) : Number(decimal);
    return point >= 0x20 && point <= 0x10ffff && !(point >= 0xd800 && point <= 0xdfff)
      ? String.fromCodePoint(point)
      : whole;
  });
}

/** Words in Latin letters with a few letters of another alphabet that look the same. */
function unmix(text: string): string {
  return text.replace(/[\p{L}\p{M}]+/gu, (word) => {
    if (!/\p{Script=Latin}/u.test(word) || !/[\p{Script=Cyrillic}\p{Script=Greek}]/u.test(word)) return word;
    const letters = [...word].map((letter) => LOOKALIKES[letter] ?? letter);
    const latin = letters.join("");
    return /[\p{Script=Cyrillic}\p{Script=Greek}]/u.test(latin) ? word : latin;
  });
}

/** French puts a blank before ; : ! ? and inside « ». */
function tidyBlanks(text: string, language: string): string {
  const once = text.replace(/(?<=\S)[ \u00a0]{2,}(?=\S)/gu, " ").replace(/(?<=\p{L}) +(?=[,.](?:\s|$))/gu, "");
  if (language === "fr" || language === "") return once;
  return once.replace(/(?<=\p{L}) +(?=[;:!?](?:\s|$))/gu, "");
}
