// Words in which a letter of another alphabet stands for one that looks the same.

const CYRILLIC = "АВЕКМНОРСТХаеорсухіјѕ";
const GREEK = "ΑΒΕΖΗΙΚΜΝΟΡΤΥΧο";
/** Letters of other alphabets that look like Latin ones. */
const TO_LATIN: ReadonlyMap<string, string> = new Map(
  [...(CYRILLIC + GREEK)].map((letter, i) => [letter, [..."ABEKMHOPCTXaeopcyxijsABEZHIKMNOPTYXo"][i] ?? letter]),
);
/** And back; і, ј and ѕ are letters of few languages. */
const TO_CYRILLIC: ReadonlyMap<string, string> = new Map(
  [...CYRILLIC].filter((letter) => !"іјѕ".includes(letter)).map((letter) => [TO_LATIN.get(letter) ?? letter, letter]),
);

const isCyrillic = (letter: string): boolean => /\p{Script=Cyrillic}/u.test(letter);
const isLatin = (letter: string): boolean => /\p{Script=Latin}/u.test(letter);

/** Every word in one alphabet, where every letter that is out of place has its like in the other one. */
export const unmixLetters = (text: string): string => text.replace(/[\p{L}\p{M}]+/gu, unmixWord);

function unmixWord(word: string): string {
  if (!/\p{Script=Latin}/u.test(word) || !/[\p{Script=Cyrillic}\p{Script=Greek}]/u.test(word)) return word;
  const letters = [...word];
  const latin = letters.map((letter) => TO_LATIN.get(letter) ?? letter).join("");
  if (!/[\p{Script=Cyrillic}\p{Script=Greek}]/u.test(latin)) return latin;
  // Hβ is a line of hydrogen: Greek letters stand beside Latin ones by right, Cyrillic ones hardly ever.
  const cyrillic = letters.map((letter) => TO_CYRILLIC.get(letter) ?? letter).join("");
  const most = letters.filter(isCyrillic).length >= letters.filter(isLatin).length;
  return most && !/[\p{Script=Latin}\p{Script=Greek}]/u.test(cyrillic) ? cyrillic : word;
}
