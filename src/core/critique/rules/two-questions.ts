// Prompts that ask two things in one breath: "Who discovered Uranus, and when?"
import { languageOfText } from "../languages.ts";

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
    ask: "wer|wen|wem|was|wann|wo|warum|wie|welche[rsmn]?|woher|wohin|wor?(?:an|auf|aus|in|mit|durch|für|nach|von)",
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
    ask: "кто|кого|кем|чем|что|где|когда|почему|как|сколько|откуда|куда|как(?:ой|ая|ое|ие|ом|ую)",
    and: "и",
    or: "или",
    before: "в|на|с|из|от|по|о",
    later: "кто|кем|чем|где|когда|почему|зачем|сколько|откуда|как(?:ой|ая|ое|ие|ом|ую)",
    unless: "между|разница|отличие",
  },
  pt: {
    ask: "quem|que|quando|onde|como|porque|qual|quais|quantos|quantas",
    and: "e",
    or: "ou",
    before: "a|de|em|com|por|para|desde",
    later: "quando|onde|por que|qual|quais|quantos|quantas",
    unless: "entre|diferença",
  },
  pl: {
    ask: "kto|kogo|kim|co|czym|kiedy|gdzie|dlaczego|jak|ile|skąd|dokąd|który|która|które|jaki|jaka|jakie",
    and: "i|oraz",
    or: "lub|albo",
    before: "w|na|z|od|po|o|przez",
    later: "kto|kiedy|gdzie|dlaczego|ile|skąd|dokąd|jaki|jaka|jakie|w którym",
    unless: "między|pomiędzy|różnica|różni",
  },
  tr: {
    ask: "kim|ne zaman|nerede|neden|niçin|nasıl|kaç|hangi",
    and: "ve",
    or: "veya",
    before: "",
    later: "ne zaman|nerede|neden|niçin|nasıl|kaç|kim",
    unless: "arasında|arasındaki|fark",
  },
};

/** Two words that ask side by side where "and" is written to the word, or is left out. */
const IN_OTHER_SCRIPTS =
  /^\P{L}*(?:מי|מה|היכן|איפה|מתי)\s(?:[^?]*\s)?ו(?:מתי|היכן|איפה|למה|כמה)(?!\p{L})|^\P{L}*(?:من|ما|ماذا|أين|متى|كيف)\s(?:[^?؟]*\s)?و(?:متى|أين|كيف|لماذا|كم)(?!\p{L})|谁(?:在|于)?(?:什么时候|何时|哪一?年|哪里)|(?:什么时候|何时)[、和]?(?:何地|在?哪里?|[由被]?谁)|(?:(?:誰|だれ)が、?(?:いつ|どこ)|いつ、?(?:どこ|誰|だれ))(?!.*か[をがはも])|누가,?\s?(?:언제|어디)|언제,?\s?(?:누가|어디)/u;

const L = "(?<![\\p{L}\\p{M}])";
/** A word that ends here, and is no part of "why-question" either. */
const R = "(?![\\p{L}\\p{M}]|-\\p{L})";

const pattern = ({ ask, and, or, before, later }: Words) => ({
  asking: new RegExp(`${L}(?:${ask})${R}`, "iu"),
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
  if (IN_OTHER_SCRIPTS.test(prompt)) return true;
  const patterns = PATTERNS.get(languageOfText(prompt, language));
  if (!patterns || patterns.unless.test(prompt)) return false;
  const sideBySide = patterns.sideBySide.exec(prompt);
  // "Which table tells when and where it rises?": what follows another word that asks is a clause, and no question.
  if (sideBySide) return !patterns.asking.test(prompt.slice(0, sideBySide.index));
  const [, middle = "", later = ""] = patterns.inOneBreath.exec(prompt) ?? [];
  // "the point at which it rises and at which it sets": both belong to one clause.
  return later !== "" && !patterns.asking.test(middle);
}
