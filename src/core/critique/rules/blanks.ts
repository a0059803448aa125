// Blanks: one at a time, and round the word that matters.
import { BLANK } from "../../cards/cards.ts";
import type { Fact } from "../../facts/fact.ts";
import { parseStatement, writtenInStatement } from "../../facts/gaps.ts";
import { foldText } from "../../text/fold-text.ts";
import { graphemes } from "../../text/graphemes.ts";
import { runsOn, wordsOf } from "../../text/words-of.ts";
import type { Asked } from "../asked.ts";
import { isSmallWord, languageOfText } from "../languages.ts";
import type { Fix, Remark } from "../note.ts";
import { listedParts } from "./parts-of-answer.ts";

/** A blank of more words, or of more of the sentence, asks for a clause (common practice). */
const MOST_WORDS = 3;
const MOST_RUNNING_ON = 12;
const MOST_SHARE = 0.6;
/** From how many gaps on a statement is a text to be divided. */
const MANY_GAPS = 5;

/** Words that carry nothing by themselves, by language. */
const SMALL: Readonly<Record<string, ReadonlySet<string>>> = Object.fromEntries(
  Object.entries({
    en: "the a an of in on at to for from by with and or but is are was were be been it its that this these those as has have had will would can also very there which who whom i you he she we they me him her us them my your his our their not no some any so if than then",
    de: "der die das den dem des ein eine einen einem einer eines von im in am an auf aus nach um zu zum zur mit bei durch für und oder aber ist sind war waren sein es als auch sehr hat haben wird werden ich du er sie wir ihr mich ihn uns euch mein dein unser nicht kein so wenn",
    fr: "le la les l un une des du de d à au aux en dans sur pour par avec et ou mais est sont était étaient il elle ce cette ces qui que aussi très a ont je tu nous vous ils elles mon ton son ma ta sa nos vos ne pas si",
    es: "el la los las un una unos unas de del al a en con por para y o pero es son era eran se su sus que también muy ha han yo tú él ella nosotros ellos ellas mi tu nuestro no si",
    it: "il lo la i gli le un uno una di del della dei delle a al alla in nel nella da con per e o ma è sono era erano si suo sua che anche molto ha hanno io tu lui lei noi voi loro mio tuo nostro non se",
    pt: "o a os as um uma de do da dos das em no na nos nas ao à com por para e ou mas é são foi que se não eu ele ela",
    pl: "w we z ze na do od po przez dla o i oraz a ale lub jest są był była było się nie to że jak",
    ru: "в во на с со из к ко от до по о об у за для и или а но не это что как он она оно они был была было были же",
    el: "ο η το οι τα του της των τον την στο στη στην στον σε από με για και ή είναι ήταν που να δεν",
    ar: "في من على إلى عن مع و أو هو هي هذا هذه أن التي الذي لا",
    he: "של את על עם אל מן או הוא היא זה זו כי לא",
    hi: "का की के में से को पर ने और या है हैं था थे यह वह कि भी",
    ja: "の は が を に で と も へ や から まで より です ます",
    zh: "的 了 是 在 和 与 與 于 於 也 很",
  }).map(([language, words]) => [language, new Set(words.split(" ").map(foldText))]),
);

/** `blank-size`: a blank too large to be one thing, or round a word that carries nothing. */
export function blankSize(fact: Fact, asked: readonly Asked[]): readonly Remark[] {
  if (fact.kind !== "statement") return [];
  const parsed = parseStatement(fact.statement);
  if (!parsed.ok) return [];
  const whole = parsed.value.map((part) => part.text).join("");
  const small = SMALL[languageOfText(whole, fact.language)];
  return asked.flatMap(({ angle, prompt, answer }): readonly Remark[] => {
    const remark = (message: string, fix: Fix | null): readonly Remark[] => [
      { rule: "blank-size", angle, message, about: `${whole}\n${answer}`, fix },
    ];
    if (!/[\p{L}\p{N}\p{S}]/u.test(answer)) return remark("The blank holds no word at all.", closeFix(fact, angle));
    // He with a capital in the middle of a sentence is helium.
    const plain = answer === answer.toLowerCase() || prompt.startsWith(BLANK);
    if (plain && areSmall(answer, small)) {
      return remark(
        `“${answer}” can be guessed from any sentence. Blank out a word that says something.`,
        closeFix(fact, angle),
      );
    }
    const words = runsOn(answer) ? graphemes(answer).length / (MOST_RUNNING_ON / MOST_WORDS) : wordsOf(answer).length;
    const share = graphemes(answer).length / graphemes(whole).length;
    if (isName(answer) || (words <= MOST_WORDS && (share <= MOST_SHARE || words <= 2))) return [];
    return remark("The blank takes in too much of the sentence. Blank out one word or name of it.", null);
  });
}

const areSmall = (text: string, small: ReadonlySet<string> | undefined): boolean =>
  small !== undefined && /\p{L}/u.test(text) && wordsOf(text).every((word) => small.has(foldText(word)));

/** Verbs in the languages of the small words: what has one is no name. */
const VERBS = /(?<!\p{L})(?:is|are|was|were|has|ist|sind|war|waren|hat|est|sont|était|es|son|era|è|sono)(?!\p{L})/iu;

/** A name may be long: it ends with a capital, and all its words have one but the small ones between them. */
function isName(text: string): boolean {
  const words = wordsOf(text);
  if (words.length > 2 * MOST_WORDS || VERBS.test(text) || isSmallWord(words[0] ?? "")) return false;
  const hasCapital = (word: string): boolean => /^[\p{Lu}\p{N}]/u.test(word);
  return hasCapital(words.at(-1) ?? "") && words.every((word) => hasCapital(word) || isSmallWord(word));
}

/** The same statement without this gap, if another is left. */
function closeFix(fact: Extract<Fact, { kind: "statement" }>, angle: string): Fix | null {
  const parsed = parseStatement(fact.statement);
  if (!parsed.ok || fact.gaps.length < 2) return null;
  const { id: _id, subject: _subject, angles, ...content } = fact;
  let gap = -1;
  const statement = parsed.value
    .map((part) => {
      if (part.gap) gap++;
      const plain = writtenInStatement(part.text);
      return part.gap && `gap-${fact.gaps[gap]}` !== angle ? `[${plain}]` : plain;
    })
    .join("");
  const gaps = fact.gaps.filter((number) => `gap-${number}` !== angle);
  return {
    label: "Close this blank",
    content: { ...content, statement, gaps },
    angles: angles.filter((one) => one !== angle),
  };
}

/** Lines, dots and empty brackets; those beside a Latin letter, as in open() or __init__, belong to the word. */
const BLANKS =
  /_{3,}|(?<![\p{Script=Latin}\p{N}_])__(?![\p{Script=Latin}\p{N}_])|＿+|(?<=^|\s)(?:_|-{3,}|\.{3,}|…+)(?=\s|[.,;:!?]|$)|(?<![\p{Script=Latin}\p{N}])(?:\[\s{0,9}(?:\.{3}|…|\?)?\s{0,9}\]|\(\s{0,9}(?:\.{3}|…|\?)?\s{0,9}\)|（\s{0,9}(?:…|？)?\s{0,9}）|【\s{0,9}】)/gu;

/** `several-blanks`: a prompt with two blanks, or a statement with so many that it is a text. */
export function severalBlanks(fact: Fact, asked: readonly Asked[]): readonly Remark[] {
  if (fact.kind === "statement") {
    if (fact.gaps.length < MANY_GAPS) return [];
    const message = `The statement has ${fact.gaps.length} blanks. Make several statements of it.`;
    return [{ rule: "several-blanks", angle: null, message, about: fact.statement, fix: null }];
  }
  if (fact.kind !== "pair") return [];
  const blanks = fact.prompt.match(BLANKS)?.length ?? 0;
  const first = asked.find(({ angle }) => angle === "forward");
  if (blanks < 2 || !first) return [];
  const message = `The prompt has ${blanks} blanks to be filled at once.`;
  return [{ rule: "several-blanks", angle: "forward", message, about: fact.prompt, fix: fillFix(fact, blanks) }];
}

/** The blanks filled in as gaps of a statement, if the answer has a word for each. */
function fillFix(fact: Extract<Fact, { kind: "pair" }>, blanks: number): Fix | null {
  const words = listedParts(fact.answer);
  if (words.length !== blanks) return null;
  const { kind: _kind, prompt, answer: _answer, id: _id, subject: _subject, angles: _angles, ...extras } = fact;
  let from = 0;
  let statement = "";
  for (const [i, match] of [...prompt.matchAll(BLANKS)].entries()) {
    statement += `${writtenInStatement(prompt.slice(from, match.index))}[${writtenInStatement(words[i] ?? "")}]`;
    from = match.index + match[0].length;
  }
  statement += writtenInStatement(prompt.slice(from));
  const gaps = words.map((_, i) => i + 1);
  const content = { ...extras, kind: "statement" as const, statement, gaps };
  return { label: "Make it a statement, one blank a card", content, angles: gaps.map((n) => `gap-${n}` as const) };
}
