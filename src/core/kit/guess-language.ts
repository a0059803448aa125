// Which language a text is set as: joining, direction, line breaking and hyphenation depend on it. Scripts by Unicode.

/** A language by its ISO 639-1 code, and the direction it is written in. */
export interface Language {
  readonly code: string;
  readonly direction: "ltr" | "rtl";
}

/** Scripts that tell the language well enough to set a text. */
const BY_SCRIPT: readonly { readonly script: RegExp; readonly code: string }[] = [
  { script: /\p{Script=Arabic}/gu, code: "ar" },
  { script: /\p{Script=Hebrew}/gu, code: "he" },
  { script: /\p{Script=Devanagari}/gu, code: "hi" },
  { script: /\p{Script=Thai}/gu, code: "th" },
  { script: /[\p{Script=Hiragana}\p{Script=Katakana}]/gu, code: "ja" },
  { script: /\p{Script=Hangul}/gu, code: "ko" },
  { script: /\p{Script=Han}/gu, code: "zh" },
  { script: /\p{Script=Greek}/gu, code: "el" },
  { script: /\p{Script=Cyrillic}/gu, code: "ru" },
];

/**
 * The language of a text by the script that most of its letters are in; `usual` for Latin letters and for none.
 * Characters that Chinese and Japanese share count as Japanese if `usual` is "ja" or kana stand beside them.
 * The direction is that of the first letter (Unicode Standard Annex 9, rules P2 and P3).
 */
export function guessLanguage(text: string, usual: string): Language {
  const latin = text.match(/\p{Script=Latin}/gu)?.length ?? 0;
  const counts = BY_SCRIPT.map(({ script, code }) => ({ code, count: text.match(script)?.length ?? 0 }));
  const most = counts.reduce((a, b) => (b.count > a.count ? b : a));
  const direction = directionOf(text, usual);
  if (most.count === 0 || most.count < latin) return { code: usual, direction };
  const kana = counts.some(({ code, count }) => code === "ja" && count > 0);
  if (most.code === "zh" && (kana || usual === "ja")) return { code: "ja", direction };
  const same = SAME_SCRIPT[most.code]?.includes(usual) ?? false;
  return { code: same ? usual : most.code, direction };
}

function directionOf(text: string, usual: string): Language["direction"] {
  const first = /\p{L}/u.exec(text)?.[0];
  const rightToLeft =
    first === undefined ? RIGHT_TO_LEFT.has(usual) : /[\p{Script=Arabic}\p{Script=Hebrew}]/u.test(first);
  return rightToLeft ? "rtl" : "ltr";
}

/** Languages that share a script with the one that is guessed. */
const SAME_SCRIPT: Readonly<Record<string, readonly string[]>> = {
  ar: ["fa", "ur", "ps", "ckb"],
  he: ["yi"],
  hi: ["mr", "ne", "sa"],
  ru: ["uk", "be", "bg", "sr", "mk", "kk"],
};

const RIGHT_TO_LEFT: ReadonlySet<string> = new Set(["ar", "he", "fa", "ur", "ps", "ckb", "yi"]);

/** The longest stretch that no line break can divide, as far as spaces tell; "" where lines may break anywhere. */
export function longestWord(text: string): string {
  if (/[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]/u.test(text)) return "";
  return text.split(/\s+/u).reduce((longest, word) => (word.length > longest.length ? word : longest), "");
}
