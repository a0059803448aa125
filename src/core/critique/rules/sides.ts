// From how many sides a fact is asked, and what it is but two words.
import { defaultAngles, FIRST_ANGLES } from "../../cards/default-angles.ts";
import type { Fact } from "../../facts/fact.ts";
import { guessLanguage } from "../../kit/guess-language.ts";
import { runsOn, wordsOf } from "../../text/words-of.ts";
import { type Asked, hasHold } from "../asked.ts";
import type { Remark } from "../note.ts";
import { isYesNo } from "./yes-no.ts";

/** Answers of which the reverse would ask nothing: numbers, single signs. */
const NO_REVERSE = /^[^\p{L}]*$|^\p{L}$/u;
const LONGEST_REVERSE = 6;

/** Questions for a reason: asked in reverse, the reason would ask for any of its consequences. In the languages of `yes-no`. */
const REASON =
  /^\P{L}*(?:why|warum|weshalb|wieso|pourquoi|por qué|perché|por que|waarom|dlaczego|почему|отчего|зачем|γιατί|neden|niçin|لماذا|למה|מדוע)(?![\p{L}\p{M}])|क्यों|ทำไม|为什么|為什麼|为何|なぜ|どうして|(?<!\p{L})왜(?!\p{L})/iu;

/** `one-sided`: one way of asking where its kind has two. */
export function oneSided(fact: Fact, asked: readonly Asked[]): readonly Remark[] {
  if (FIRST_ANGLES[fact.kind].length < 2 || asked.length !== 1) return [];
  if (fact.kind === "pair" && !canBeReversed(fact)) return [];
  const { id: _id, subject: _subject, angles: _angles, ...content } = fact;
  return [
    {
      rule: "one-sided",
      angle: null,
      message: "It is asked from one side only.",
      about: fact.kind,
      fix: { label: "Ask it the other way round too", content, angles: defaultAngles(content) },
    },
  ];
}

/** A short answer that names something can be a prompt too; a question that is long is no answer to it. */
function canBeReversed({ prompt, answer }: { readonly prompt: string; readonly answer: string }): boolean {
  if (REASON.test(prompt)) return false;
  if (NO_REVERSE.test(answer.trim()) || /\p{Nd}/u.test(answer) || isYesNo(answer)) return false;
  return lengthOf(answer) <= LONGEST_REVERSE && lengthOf(prompt) <= 2 * LONGEST_REVERSE;
}

const lengthOf = (text: string): number => (runsOn(text) ? [...text].length / 3 : wordsOf(text).length);

/** Languages named before a word: "German: Stern", "(de) Stern", "star in French". By the languages' names in English, German, French and Spanish. */
const NAMED =
  /^\s*[([]?(?:in\s+)?(?:english|german|french|spanish|italian|latin|greek|arabic|hebrew|hindi|thai|chinese|japanese|russian|portuguese|dutch|englisch|deutsch|französisch|spanisch|italienisch|latein|lateinisch|griechisch|arabisch|hebräisch|anglais|allemand|français|espagnol|italien|arabe|inglés|alemán|francés|español|italiano|árabe|en|de|fr|es|it|la|el|ar|he|hi|th|zh|ja|ru|pt|nl)[)\]]?\s*:\s*|\s+(?:in|auf|en)\s+(?:english|german|french|spanish|italian|latin|greek|arabic|hebrew|hindi|thai|chinese|japanese|russian|portuguese|dutch|englisch|deutsch|französisch|spanisch|italienisch|latein|griechisch|arabisch|anglais|allemand|français|espagnol|italien|latin|arabe|inglés|alemán|francés|español|italiano|latín|árabe)\s*[?？]?\s*$|\s[([](?:english|german|french|spanish|italian|latin|greek|arabic|en|de|fr|es|it|la|el|ar|he|hi|th|zh|ja|ru|pt|nl)[)\]]\s*$/iu;

/** What stands before a word of which the translation is asked for. */
const ASKED_FOR =
  /^\s*(?:how do (?:you|we|i) say|what is|what['’]s|was heißt|was ist|wie heißt|wie sagt man|comment (?:dit-on|dire)|cómo se dice|come si dice)\s+(?=\P{L}*\p{L})/iu;

/** Two words, and what asks for them, in UTF-16 code units. */
const LONGEST_TRANSLATION = 300;

/** `bare-translation`: a word and the same word in another language, and nothing else. */
export function bareTranslation(fact: Fact): readonly Remark[] {
  if (fact.kind !== "pair" || hasHold(fact)) return [];
  const { prompt, answer } = fact;
  if (prompt.length + answer.length > LONGEST_TRANSLATION) return [];
  const named = NAMED.test(prompt) || NAMED.test(answer);
  const [asked, told] = [prompt, answer].map((side) => side.replace(NAMED, "").replace(ASKED_FOR, "")) as [
    string,
    string,
  ];
  if (!isWord(asked) || !isWord(told) || !(named || inTwoScripts(asked, told))) return [];
  const message = `“${prompt}” and “${answer}” stand alone. Add a picture, or a story in which one suggests the other.`;
  return [{ rule: "bare-translation", angle: null, message, about: `${prompt}\n${answer}`, fix: null }];
}

const isWord = (text: string): boolean =>
  /[\p{L}\p{M}]{2}|[\p{Script=Han}\p{Script=Hangul}]/u.test(text) &&
  !/\p{N}/u.test(text) &&
  (runsOn(text) ? [...text].length <= 12 : wordsOf(text).length <= 3);

/** Latin letters stand for several languages; the others tell theirs. */
function inTwoScripts(one: string, other: string): boolean {
  const [a, b] = [guessLanguage(one, "").code, guessLanguage(other, "").code];
  // A letter of the Greek alphabet names a star, it does not translate it.
  if ([one, other].some((text) => /^\p{Script=Greek}\b/u.test(text.trim()) && text.trim().length < 3)) return false;
  return a !== b && !(new Set([a, b, "zh", "ja"]).size === 2);
}
