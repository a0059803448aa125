// Which language a Latin text is in, as far as a rule that knows some languages must know.
import { guessLanguage } from "../kit/guess-language.ts";
import { foldText } from "../text/fold-text.ts";
import { wordsOf } from "../text/words-of.ts";

/** Small words that are frequent in one of these languages; those of several count for each. From memory of the languages. */
const SMALL_WORDS: Readonly<Record<string, string>> = {
  en: "the of is are was were what which who whom whose when where why how does do did a an and to in on it its that this these those has have had not no with for from by at as be can could will would should there than then you your many much",
  de: "der die das den dem des ein eine einen einem einer ist sind war waren was welche welcher welches wer wem wen wessen wann wo warum wie und oder zu im in am an auf mit von vom für aus bei nicht kein keine hat haben wird werden kann sich es sie er ich als nach über auch heisst heißt liegt gibt man viele",
  fr: "le la les l un une des du de d est sont était étaient que qu quel quelle quels quelles qui quand où pourquoi comment et ou à au aux en dans sur avec pour par ne pas se ce cette ces il elle on son sa ses plus a ont combien",
  es: "el la los las un una unos unas de del es son era eran qué que cuál cuáles quién quiénes cuándo dónde por cómo y o a al en con para no se su sus más está están hay ha han lo cuántos cuántas cuánto",
  it: "il lo la i gli le un uno una di del della dei delle è sono era erano che cosa quale quali chi quando dove perché come e o a al alla in nel nella con per non si suo sua più ha hanno c quanti quante",
  pt: "os uma uns umas do da dos das em na nos nas é são foi eram qual quais quem onde quando e ou não com para por pelo pela que seu sua mais ao à quantos quantas",
  pl: "kto kogo kiedy gdzie jest są się nie czy który która które jaki jaka jakie dlaczego ile i oraz lub w we z ze na od po przez dla przy jak był była było",
  tr: "ve veya bir bu kim hangi hangisi hangisidir kaç nedir nerede nasıl neden zaman ile için mi mı mu mü midir mıdır tarafından olan",
};

const VOTES: ReadonlyMap<string, ReadonlySet<string>> = (() => {
  const votes = new Map<string, Set<string>>();
  for (const [language, words] of Object.entries(SMALL_WORDS))
    for (const word of words.split(" ").map(foldText)) votes.set(word, (votes.get(word) ?? new Set()).add(language));
  return votes;
})();

/** Whether a word is one of the small words of the languages that are known here. */
export const isSmallWord = (word: string): boolean => VOTES.has(foldText(word));

/**
 * The language of a text by its ISO 639-1 code: by its script, for Latin letters by its small words; `told`, such as a
 * fact's own language, goes before. Empty if nothing tells.
 */
export function languageOf(text: string, told = ""): string {
  if (told !== "") return (told.split("-")[0] ?? "").toLowerCase();
  const { code } = guessLanguage(text, "");
  return code === "" ? byWords(text) : code;
}

/** The ISO 639-1 code of the language that one text of a fact is in, by the same signs as its tag. */
export const languageOfText = (text: string, told: string): string => languageOf("", textLanguage(text, told));

/**
 * The BCP 47 tag of one text of a fact whose language was told, or empty if nothing tells. A card may ask in one language
 * for words of another: another script goes before what was told, and so do the small words of English, in which people
 * ask for words of any language.
 */
export function textLanguage(text: string, told: string): string {
  const own = languageOf("", told);
  const { code } = guessLanguage(text, own);
  if (code !== own) return code;
  const words = wordsOf(foldText(text)).length > 1 ? byWords(text) : "";
  return told === "" || (words === "en" && own !== "en") ? words : told;
}

function byWords(text: string): string {
  const counts = new Map<string, number>();
  for (const word of wordsOf(foldText(text)))
    for (const language of VOTES.get(word) ?? []) counts.set(language, (counts.get(language) ?? 0) + 1);
  const [first, second] = [...counts].sort(([, a], [, b]) => b - a);
  return first && first[1] > (second?.[1] ?? 0) ? first[0] : "";
}
