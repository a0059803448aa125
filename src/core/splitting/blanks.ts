// Where a sentence could be blanked out: numbers, parts of dates, names and key terms.
import { isSmallWord, languageOf } from "../critique/languages.ts";
import { foldText } from "../text/fold-text.ts";
import { runsOn } from "../text/words-of.ts";
import type { Stretch } from "./sentences.ts";

/** Why a blank is proposed. */
export type BlankReason = "number" | "date" | "name" | "term";

/** A stretch of the text that could be asked for. */
export interface Blank extends Stretch {
  readonly why: BlankReason;
}

const MONTHS =
  "january|february|march|april|may|june|july|august|september|october|november|december|januar|februar|märz|mai|juni|juli|oktober|dezember|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre|décembre|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|gennaio|febbraio|aprile|maggio|giugno|luglio|settembre|ottobre|dicembre";
const MONTH = new RegExp(`(?<!\\p{L})(?:${MONTHS})(?!\\p{L})`, "giu");
/** March and May are words as well: months only beside a number. */
const ALSO_WORDS = /^(?:march|may|mars|mai)$/iu;
const YEAR = /(?<![\p{Nd}.,])(?:1\p{Nd}{3}|20\p{Nd}{2})(?![\p{Nd}]|[.,]\p{Nd})/u;

/** Digits with what belongs to a number, and a unit right behind. */
const NUMBER =
  /(?<![\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Nd}])[+\-−]?\p{Nd}+(?:[.,'’·  ]\p{Nd}+)*(?:\s?(?:%|‰|°|′|″)|\s(?:km|m|cm|mm|kg|g|h|min|s|ly|au|AE|pc|K|Hz|nm)(?:\/[a-zA-Z]{1,2}²?)?(?!\p{L})|\s(?:million|billion|thousand|millionen|milliarden|tausend|millions|milliards|mille|millones|mil)(?!\p{L})|[年月日時分秒個つ万億])*/giu;

/** Numbers written as words, in English, German, French and Spanish; one is too often an article. */
const NUMBER_WORD =
  /(?<!\p{L})(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|elf|zwölf|zwanzig|hundert|deux|trois|quatre|cinq|sept|huit|neuf|dix|onze|douze|vingt|cent|dos|tres|cuatro|cinco|seis|siete|ocho|nueve|diez|once|doce|veinte|cien)(?:-\p{L}+)?(?!\p{L})/giu;

/** Words in a row that begin with capitals, small words of names between them ("Edge of the Sky"). */
const NAME =
  /(?<![\p{L}\p{M}'’])\p{Lu}[\p{L}\p{M}'’]*(?:-\p{L}[\p{L}\p{M}]*)*(?:\s+(?:(?:of|von|van|de|du|des|del|di|della|dei)\s+(?:(?:the|la|le|les|der|den|el|los)\s+)?)?\p{Lu}[\p{L}\p{M}'’]*(?:-\p{L}[\p{L}\p{M}]*)*)*/gu;

/** German writes every noun with a capital, so a capital alone makes no name there. */
const NOUN_CAPITALS: ReadonlySet<string> = new Set(["de", "lb", "lu"]);

/** Words that carry a sentence and say nothing. Those of five languages; a longer word is a key term in any. */
const PLAIN = new Set(
  "about above after again against also although always among another around because become becomes been before being below beside between both bright called came cannot come could does during each every first found from great have however into itself just large last less like little long made make many might more most much named near nearly never next often once only other others over right same second seen several shall should since small some still such than that their them then there these they this those three through thus time together toward under until upon very well were what when where which while whose will with within without would years aber alle allem allen aller alles auch aufgrund bereits beiden dabei damit dann daher darin dass diese diesem diesen dieser dieses doch durch eine einem einen einer eines einige etwa etwas gegen gibt haben hatte hier immer jeder jedes jetzt kann keine können liegt machen mehr mehrere meist muss nach nicht noch oder ohne schon sehr seine seiner sich sind sogar sondern über unter viele vielen vom wegen weil weiter welche wenn werden wieder wird worden wurde wurden zwei zwischen ainsi alors après aussi autre autres avant avec beaucoup cela celle celui cette chaque comme contre dans depuis deux donc elle elles encore entre environ était étaient être fait leur leurs lors mais même moins notre nous parce pendant peut plus plusieurs pour presque quand quelque quelques sans selon sera seul sont sous souvent sur toujours tous tout toute toutes très trop une vers vous ante antes aquel aquella aunque bajo cada casi como contra cual cuando desde donde durante ella ellos entonces entre eran esta este estos fueron hacia hasta luego mientras mismo mucho muchos nada otra otro para pero poco porque pues puede según siempre sobre solo también tanto tiene todo todos unos varios anche ancora aveva come contro così della delle dello dopo dove essere fino hanno loro molti molto nella nelle nello ogni perché poco prima quale quando quasi quella quello questa questo sempre senza sono sopra sotto stata stato stesso tutti tutto verso"
    .split(" ")
    .map(foldText),
);

const LONG_WORD = 8;
const LONG_HAN = 2;

/** Places worth asking for in a sentence of a text, from left to right, none inside another. */
export function proposeBlanks(text: string, sentence: Stretch, language = ""): readonly Blank[] {
  const words = text.slice(sentence.from, sentence.to);
  const known = languageOf(text, language);
  const found: Blank[] = [];
  const add = (from: number, length: number, why: BlankReason): void => {
    const blank = { from: sentence.from + from, to: sentence.from + from + length, why };
    if (length > 0 && !found.some((one) => blank.from < one.to && one.from < blank.to)) found.push(blank);
  };
  for (const { index, 0: month } of words.matchAll(MONTH)) {
    const beside =
      /(?:\p{Nd}\W{0,3}|(?<!\p{L})(?:in|im|en)\s+)$/iu.test(words.slice(0, index)) ||
      /^\W{0,3}\p{Nd}/u.test(words.slice(index + month.length));
    if (!ALSO_WORDS.test(month) || beside) add(index, month.length, "date");
  }
  const months = found.map(({ from, to }) => [from - sentence.from, to - sentence.from] as const);
  for (const { index, 0: number } of words.matchAll(NUMBER)) {
    const text = number.trimEnd();
    const inDate = months.some(
      ([from, to]) => from - (index + text.length) <= 5 && index - to <= 9 && index - to >= -30,
    );
    add(index, text.length, inDate || YEAR.test(text) ? "date" : "number");
  }
  for (const { index, 0: number } of words.matchAll(NUMBER_WORD)) add(index, number.length, "number");
  for (const { index, 0: name } of words.matchAll(NAME)) {
    // The first word has its capital from the sentence, unless more words with capitals follow, or it stands elsewhere too.
    const first = /^[\s\p{P}]*$/u.test(words.slice(0, index));
    const several = /\s/u.test(name);
    const again = !several && text.split(name).length > 2 && occursInside(text, name);
    if (NOUN_CAPITALS.has(known)) addNoun(name, index, add);
    else if (!first || again) add(index, name.length, "name");
    else addFirst(name, index, add);
  }
  // Words from abroad, which the dictionary often does not know.
  for (const { index, 0: word } of words.matchAll(/[\p{Script=Katakana}ー]{2,}/gu)) add(index, word.length, "term");
  for (const { index, length } of terms(words, known)) add(index, length, "term");
  return found.filter((blank) => isWorthIt(text, blank)).sort((a, b) => a.from - b.from);
}

type Add = (from: number, length: number, why: BlankReason) => void;

/** The first words of a sentence have a capital anyway: a name if there are several, without an article before it. */
function addFirst(name: string, index: number, add: Add): void {
  const rest = withoutSmallWords(name);
  if (rest !== "")
    add(index + name.length - rest.length, rest.length, /\s/u.test(rest) || rest !== name ? "name" : "term");
}

/** In German: a noun, or several capitals in a row as in a name of two words. */
function addNoun(name: string, index: number, add: Add): void {
  const rest = withoutSmallWords(name);
  if (rest !== "") add(index + name.length - rest.length, rest.length, /\s/u.test(rest) ? "name" : "term");
}

/** "The Small Magellanic Cloud" as "Small Magellanic Cloud"; empty if nothing else is left. */
function withoutSmallWords(name: string): string {
  const [first = "", ...others] = name.split(/(?<=\s)/u);
  if (others.length === 0 && PLAIN.has(foldText(first))) return "";
  if (!isSmallWord(first.trim())) return name;
  return others.length === 0 ? "" : withoutSmallWords(others.join(""));
}

/** Whether a word stands with its capital in the middle of a sentence somewhere. */
const occursInside = (text: string, word: string): boolean =>
  new RegExp(`[\\p{Ll}\\p{Nd},;]\\s+${word.replace(/[\\^$.*+?()[\]{}|]/gu, "\\$&")}(?!\\p{L})`, "u").test(text);

/** Long words that are no plain ones; where words run on, those of the dictionary in Han, Katakana or Thai. */
function* terms(words: string, language: string): Generator<{ readonly index: number; readonly length: number }> {
  const segmenter = new Intl.Segmenter(language === "" ? undefined : language, { granularity: "word" });
  for (const { segment, index, isWordLike } of segmenter.segment(words)) {
    if (!isWordLike) continue;
    const running = runsOn(segment);
    const long = running
      ? /^[\p{Script=Han}々]+$/u.test(segment)
        ? [...segment].length >= LONG_HAN
        : /\p{Script=Thai}/u.test(segment) && [...segment].length >= 5
      : [...segment].length >= (/\p{Script=Latin}|\p{Script=Cyrillic}|\p{Script=Greek}/u.test(segment) ? LONG_WORD : 5);
    if (long && !PLAIN.has(foldText(segment)) && !isVerb(segment, language)) yield { index, length: segment.length };
  }
}

/** Forms of verbs and adverbs that are told by their ends; in German whatever is no noun. */
const isVerb = (word: string, language: string): boolean =>
  (language === "en" && /(?:ed|ing|ly)$/u.test(word)) || (NOUN_CAPITALS.has(language) && /^\p{Ll}/u.test(word));

const isWorthIt = (text: string, { from, to }: Stretch): boolean => {
  const word = text.slice(from, to);
  return (
    /[\p{L}\p{N}]/u.test(word) &&
    !PLAIN.has(foldText(word)) &&
    !(/^\p{L}$/u.test(word) && !/\p{Script=Han}|\p{Script=Greek}/u.test(word))
  );
};
