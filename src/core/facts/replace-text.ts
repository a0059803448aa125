// Replacing words in many facts at once.

/** What is looked for, taken literally, and what takes its place. */
export interface Replacement {
  readonly find: string;
  readonly by: string;
  /** Whether capital letters must agree. */
  readonly matchCase: boolean;
  /** Whether only whole words count: no letter, mark or digit stands beside them. */
  readonly wholeWords: boolean;
}

/** The text with every occurrence replaced, from left to right. Both are compared as composed characters (NFC). */
export function replaceText(text: string, { find, by, matchCase, wholeWords }: Replacement): string {
  const sought = find.normalize("NFC").replace(/[\\^$.*+?()[\]{}|/]/gu, "\\$&");
  if (sought === "") return text;
  const edge = "[\\p{L}\\p{M}\\p{N}]";
  // A mark after what was found belongs to its last letter, so that this is another letter.
  const pattern = wholeWords ? `(?<!${edge})${sought}(?!${edge})` : `${sought}(?!\\p{M})`;
  const composed = text.normalize("NFC");
  const replaced = composed.replace(new RegExp(pattern, matchCase ? "gu" : "giu"), () => by);
  return replaced === composed ? text : replaced;
}
