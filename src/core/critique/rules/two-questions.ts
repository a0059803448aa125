// Prompts that ask two things in one breath: "Who discovered Uranus, and when?"
import { languageOf } from "../languages.ts";

interface Words {
  /** Words that ask. */
  readonly ask: string;
  /** "and"; together with "or" it joins two words that ask and stand side by side. */
  readonly and: string;
  readonly or: string;
  /** Words that may stand before one that asks. */
  readonly before: string;
  /** Words that ask after "and" too: not those that also begin a clause there, as French "et qui brille". */
  readonly later: string;
  /** With one of these, "and" joins what the question is about. */
  readonly unless: string;
}

const WORDS: Readonly<Record<string, Words>> = {
  en: {
    ask: "who|whom|whose|what|when|where|why|how|which",
    and: "and",
    or: "or",
    before: "in|at|by|on|to|from|for|with|under",
    later: "who|whom|what|when|where|why|how|which",
    unless: "between|difference",
  },
  de: {
    ask: "wer|wen|wem|was|wann|wo|warum|wie|welche[rsmn]?|woher|wohin",
    and: "und",
    or: "oder",
    before: "in|an|auf|seit|mit|von|zu|aus|bei|um",
    later: "wer|wen|was|wann|wo|warum|weshalb|wie|welche[rsmn]?|woher|wohin",
    unless: "zwischen|unterschied",
  },
  fr: {
    ask: "qui|que|quoi|quand|où|pourquoi|comment|quel(?:le)?s?|combien",
    and: "et",
    or: "ou",
    before: "à|de|en|dans|par|avec|pour|depuis",
    later: "quand|où|pourquoi|comment|quel(?:le)?s?|combien",
    unless: "entre|différence",
  },
  es: {
    ask: "quién(?:es)?|qué|cuándo|dónde|cómo|cuál(?:es)?|cuánt[oa]s?",
    and: "y",
    or: "o",
    before: "a|de|en|con|por|para|desde",
    later: "quién(?:es)?|qué|cuándo|dónde|cómo|cuál(?:es)?|cuánt[oa]s?|por qué",
    unless: "entre|diferencia",
  },
  it: {
    ask: "chi|che|cosa|quando|dove|perché|come|quale|quali|quant[oaie]",
    and: "e",
    or: "o",
    before: "a|di|da|in|con|per",
    later: "quando|dove|perché|quale|quali|quant[oaie]|come(?=\\s*\\?)",
    unless: "tra|fra|differenza",
  },
  ru: {
    ask: "кто|что|где|когда|почему|как|сколько|откуда|куда|как(?:ой|ая|ое|ие|ом|ую)",
    and: "и",
    or: "или",
    before: "в|на|с|из|от|по|о",
    later: "кто|где|когда|почему|зачем|сколько|откуда|как(?:ой|ая|ое|ие|ом|ую)",
    unless: "между|разница|отличие",
  },
};

const L = "(?<![\\p{L}\\p{M}])";
const R = "(?![\\p{L}\\p{M}])";

const pattern = ({ ask, and, or, before, later }: Words) => ({
  sideBySide: new RegExp(
    `${L}(${ask})${R}(?:\\s+\\p{L}+)?\\s+(?:${and}|${or})\\s+(?:\\p{L}+\\s+)?(?!\\1${R})(?:${ask})${R}`,
    "iu",
  ),
  inOneBreath: new RegExp(
    `^[^\\p{L}]*(?:(?:${before})\\s+)?(?:${ask})${R}(.*),?\\s${and}\\s+(?:(?:${before})\\s+)?(${later})${R}`,
    "iu",
  ),
});

const PATTERNS: ReadonlyMap<string, ReturnType<typeof pattern> & { readonly unless: RegExp }> = new Map(
  Object.entries(WORDS).map(([language, words]) => [
    language,
    { ...pattern(words), unless: new RegExp(`${L}(?:${words.unless})${R}`, "iu") },
  ]),
);

/** Whether a prompt asks two things, in a language that is known here. */
export function asksTwice(prompt: string, language: string): boolean {
  const patterns = PATTERNS.get(languageOf(prompt, language));
  if (!patterns || patterns.unless.test(prompt)) return false;
  if (patterns.sideBySide.test(prompt)) return true;
  const [, middle = "", later = ""] = patterns.inOneBreath.exec(prompt) ?? [];
  // "the point at which it rises and at which it sets": both belong to one clause.
  return later !== "" && !new RegExp(`${L}${later}${R}`, "iu").test(middle);
}
