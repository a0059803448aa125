// What the answer is: short, not guessable, not to be read in the prompt, and with something to hold on to.
import type { Fact } from "../../facts/fact.ts";
import { foldText } from "../../text/fold-text.ts";
import { graphemes } from "../../text/graphemes.ts";
import { runsOn, wordsOf } from "../../text/words-of.ts";
import { type Asked, hasHold } from "../asked.ts";
import { isSmallWord } from "../languages.ts";
import type { Fix, Remark } from "../note.ts";
import { isItem, listedParts } from "./parts-of-answer.ts";

/** Longest answers that are still said in one breath; a rule of the trade (common practice). */
const MOST_WORDS = 10;
const MOST_CHARACTERS = 80;
const MOST_RUNNING_ON = 28;

/** `short-answer`. Lists have a rule of their own. */
export const shortAnswer = (fact: Fact, asked: readonly Asked[]): readonly Remark[] =>
  asked.flatMap(({ angle, answer }): readonly Remark[] => {
    // Asked in reverse the answer is the prompt, which may be a whole question.
    if (angle === "reverse" || angle === "name-to-formula") return [];
    const parts = listedParts(answer);
    if (parts.length > 2 && parts.every(isItem)) return [];
    const length = lengthWords(answer);
    if (length === null) return [];
    const message = `The answer has ${length}. What is the least that must be said?`;
    return [{ rule: "short-answer", angle, message, about: answer, fix: restToNote(fact, answer) }];
  });

function lengthWords(answer: string): string | null {
  const characters = graphemes(answer).length;
  if (runsOn(answer)) return characters > MOST_RUNNING_ON ? `${characters} characters` : null;
  const words = wordsOf(answer).length;
  if (words > MOST_WORDS) return `${words} words`;
  return characters > MOST_CHARACTERS ? `${characters} characters` : null;
}

/** What stands before the first pause is the answer, the rest goes below it. */
function restToNote(fact: Fact, answer: string): Fix | null {
  if (fact.kind !== "pair") return null;
  const pause = /(?<=\S)(?:\s*[;；。]|\s+[–—]\s|[.!]\s|\s+\()/u.exec(answer);
  const first = pause ? answer.slice(0, pause.index).trim() : "";
  if (!pause || first === "" || lengthWords(first) !== null) return null;
  const bracket = pause[0].trim() === "(";
  const rest = answer.slice(pause.index + (bracket ? 0 : pause[0].length)).trim();
  const note = [rest, fact.note].filter((text) => text !== "").join("\n");
  const { id: _id, subject: _subject, angles: _angles, ...content } = fact;
  return {
    label: `Ask only for “${first}”, the rest goes into the note`,
    content: { ...content, answer: first, note },
  };
}

/** `given-away`: the answer can be read in the prompt. */
export const givenAway = (fact: Fact, asked: readonly Asked[]): readonly Remark[] =>
  asked.flatMap(({ angle, prompt, answer }): readonly Remark[] => {
    if (angle === "reverse" || fact.kind === "list") return [];
    const at = isSmallWord(answer) ? null : placeOf(answer, prompt);
    if (at === null) return wordsGivenAway({ angle, prompt, answer });
    const message = `The prompt says “${prompt.slice(at.from, at.to)}”, which is the answer.`;
    return [{ rule: "given-away", angle, message, about: `${prompt}\n${answer}`, fix: hideFix(fact, at) }];
  });

/** The answer is not there as a whole, but each of its words is. */
function wordsGivenAway({ angle, prompt, answer }: Pick<Asked, "angle" | "prompt" | "answer">): readonly Remark[] {
  const words = wordsOf(answer).filter((word) => !isSmallWord(word));
  if (words.length < 2 || runsOn(answer) || !words.every((word) => placeOf(word, prompt))) return [];
  const message = `Every word of “${answer}” can be read in the prompt.`;
  return [{ rule: "given-away", angle, message, about: `${prompt}\n${answer}`, fix: null }];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where a text stands whole in another, accents and capitals aside; null if it does not, or is a single character. */
function placeOf(sought: string, text: string): Stretch | null {
  const wanted = foldText(sought).replace(/[\s.。!?]+$/u, "");
  if (graphemes(wanted).length < 2 || !/[\p{L}\p{N}]/u.test(wanted)) return null;
  const running = runsOn(wanted);
  // Folded character by character, so that places agree.
  const characters = [...text];
  const folded = characters.map((one) => foldText(one));
  const starts: number[] = [];
  for (let i = 0, at = 0; i < characters.length; at += characters[i++]?.length ?? 0) starts.push(at);
  const whole = folded.join("");
  const owner = folded.flatMap((one, i) => Array.from({ length: one.length }, () => i));
  for (let at = whole.indexOf(wanted); at >= 0; at = whole.indexOf(wanted, at + 1)) {
    const before = whole[at - 1] ?? " ";
    const after = whole[at + wanted.length] ?? " ";
    if (!running && (/[\p{L}\p{N}]/u.test(before) || /[\p{L}\p{N}]/u.test(after))) continue;
    // A number inside a longer one is another number.
    if (/\p{N}$/u.test(wanted) && /[.,]/u.test(after) && /\p{N}/u.test(whole[at + wanted.length + 1] ?? "")) continue;
    if (/^\p{N}/u.test(wanted) && /[.,−-]/u.test(before)) continue;
    const first = owner[at] ?? 0;
    const last = owner[at + wanted.length - 1] ?? first;
    return { from: starts[first] ?? 0, to: (starts[last] ?? 0) + (characters[last]?.length ?? 1) };
  }
  return null;
}

function hideFix(fact: Fact, at: Stretch): Fix | null {
  if (fact.kind !== "pair") return null;
  const { id: _id, subject: _subject, angles: _angles, ...content } = fact;
  const start = fact.prompt.length - fact.prompt.trimStart().length;
  const prompt = `${fact.prompt.slice(0, start + at.from)}…${fact.prompt.slice(start + at.to)}`;
  return /[\p{L}\p{N}]/u.test(prompt) ? { label: "Leave it out of the prompt", content: { ...content, prompt } } : null;
}

/** Yes and no in English, German, French, Spanish, Italian, Portuguese, Dutch, Polish, Russian, Greek, Turkish, Arabic, Hebrew, Hindi, Thai, Chinese, Japanese and Korean. */
const YES_NO = new Set(
  "yes no true false right wrong correct incorrect ja nein richtig falsch wahr oui non vrai faux si no verdadero falso cierto vero sim nao verdadeiro nee juist onjuist tak nie prawda falsz да нет верно неверно правда ложь ναι οχι evet hayır hayir doğru yanlış نعم لا صحيح خطا כן לא נכון הא नहीं हां हाँ सही गलत ใช่ ไม่ใช่ ไม่ จริง เท็จ 是 不是 否 对 错 不对 正确 错误 はい いいえ 正しい 예 아니요 네 아니오"
    .split(" ")
    .map(foldText),
);
/** Questions end so; in Japanese also with か. */
const QUESTION =
  /[?？؟]\s*["”»)]*$|か[。.]?$|^\s*(?:true or false|richtig oder falsch|wahr oder falsch|vrai ou faux|verdadero o falso|vero o falso)/iu;

/** `yes-no`: the answer is yes or no. */
export const yesNo = (_fact: Fact, asked: readonly Asked[]): readonly Remark[] =>
  asked.flatMap(({ angle, prompt, answer }): readonly Remark[] => {
    if (angle === "reverse" || !QUESTION.test(prompt)) return [];
    const first = foldText(answer.split(/[,;.:!，。、]|\s[–—-]\s/u)[0] ?? "").trim();
    if (!YES_NO.has(first)) return [];
    const message = `The answer is “${answer.length > 30 ? first : answer}”. Ask which, what or when instead.`;
    return [{ rule: "yes-no", angle, message, about: `${prompt}\n${answer}`, fix: null }];
  });

/** Digits of any script with what belongs to a number, a unit or the parts of a date behind or before. */
const NUMBER =
  /^(?:ca?\.|about|around|etwa|rund|environ|circa|~|≈|±|<|>|\$|€|£)?\s*[+\-−–]?\s*\p{Nd}[\p{Nd}\s.,:'’/·×^–−-]*(?:\s*(?:e[+-]?\d+|%|‰|°|′|″|[²³⁻\p{L}]{1,3}(?:\/[\p{L}]{1,3}[²³]?)?|percent|prozent|degrees?|years?|days?|hours?|minutes?|seconds?|metres?|meters?|million|billion|millionen|milliarden|millions|milliards|jahre|tage|stunden|ans|jours|años|días|年|月|日|时|個|个|年前|光年|光年前|ปี|वर्ष|سنة)\.?){0,3}$/iu;
const MONTH =
  /^(?:\p{Nd}{1,2}\.?\s+)?(?:de\s+)?(?:january|february|march|april|may|june|july|august|september|october|november|december|januar|februar|märz|mai|juni|juli|oktober|dezember|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre|décembre|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|gennaio|febbraio|aprile|maggio|giugno|luglio|settembre|ottobre|dicembre)(?:\s+(?:de\s+)?\p{Nd}{1,4}(?:,\s*\p{Nd}{1,4})?)?$/iu;

/** `bare-number`: a number or a date, or a word spelt with accents, with neither story nor picture nor note. */
export function bareNumber(fact: Fact, asked: readonly Asked[]): readonly Remark[] {
  if (hasHold(fact)) return [];
  return asked.flatMap(({ angle, answer }): readonly Remark[] => {
    const accents =
      fact.kind === "spelling" && fact.accents === "count" && /\p{Script=Latin}\p{M}/u.test(fact.word.normalize("NFD"));
    if (angle === "reverse" || fact.kind === "formula" || /^position-/u.test(angle)) return [];
    if (!accents && !isNumber(answer)) return [];
    const what = accents ? "The word has accents" : "The answer is a number";
    const message = `${what}, and nothing stands beside it. Add a story or a picture in which it occurs.`;
    return [{ rule: "bare-number", angle, message, about: answer, fix: null }];
  });
}

/** A single digit is a handful of things and can be pictured. */
const isNumber = (answer: string): boolean =>
  (answer.match(/\p{Nd}/gu)?.length ?? 0) > 1
    ? NUMBER.test(answer) || MONTH.test(answer)
    : MONTH.test(answer) && /\p{Nd}/u.test(answer);
