// What the answer is: short, and not to be read in the prompt.
import type { Fact } from "../../facts/fact.ts";
import { foldText } from "../../text/fold-text.ts";
import { graphemes } from "../../text/graphemes.ts";
import { runsOn, wordsOf } from "../../text/words-of.ts";
import { type Asked, withoutFormulae } from "../asked.ts";
import { isSmallWord } from "../languages.ts";
import type { Fix, Remark } from "../note.ts";
import { isItem, listedParts } from "./parts-of-answer.ts";
import { isYesNo } from "./yes-no.ts";

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

function lengthWords(whole: string): string | null {
  const answer = withoutFormulae(whole);
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
    // "有没有" does not give away "没有": what decides a question is in it by its form, and has a rule of its own.
    if (angle === "reverse" || fact.kind === "list" || (runsOn(answer) && isYesNo(answer))) return [];
    const at = isSmallWord(answer) ? null : placeOf(answer, prompt);
    if (at === null) return wordsGivenAway({ angle, prompt, answer });
    const message = `The prompt says “${prompt.slice(at.from, at.to)}”, which is the answer.`;
    return [{ rule: "given-away", angle, message, about: `${prompt}\n${answer}`, fix: hideFix(fact, at) }];
  });

/** The answer is not there as a whole, but each of its words is. */
function wordsGivenAway({ angle, prompt, answer }: Pick<Asked, "angle" | "prompt" | "answer">): readonly Remark[] {
  const words = wordsOf(withoutFormulae(answer)).filter((word) => !isSmallWord(word));
  if (words.length < 2 || runsOn(answer) || !words.every((word) => placeOf(word, prompt))) return [];
  const message = `Every word of “${answer}” can be read in the prompt.`;
  return [{ rule: "given-away", angle, message, about: `${prompt}\n${answer}`, fix: null }];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Korean writes its particles to the word; folded, its syllables are taken apart. */
const KOREAN_PARTICLE = new RegExp(
  `^\\p{Script=Hangul}(?:${"은 는 이 가 을 를 의 에 와 과 도 로 이다".normalize("NFKD").replaceAll(" ", "|")})(?!\\p{L})`,
  "u",
);

/** Where a text stands whole in another, accents and capitals aside; null if it does not, or is a single character. */
function placeOf(sought: string, text: string): Stretch | null {
  const wanted = foldText(sought).replace(/(?<![\s.。!?])[\s.。!?]+$/u, "");
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
    const ends = !/[\p{L}\p{N}]/u.test(after) || KOREAN_PARTICLE.test(whole.slice(at + wanted.length - 1));
    if (!running && (/[\p{L}\p{N}]/u.test(before) || !ends)) continue;
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
