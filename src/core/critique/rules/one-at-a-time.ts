// One thing a card: no second question, no second answer, no list asked whole.
import { FIRST_ANGLES } from "../../cards/default-angles.ts";
import type { Fact } from "../../facts/fact.ts";
import { freshNumbers } from "../../facts/list-numbers.ts";
import type { Asked } from "../asked.ts";
import { languageOf } from "../languages.ts";
import type { Fix, Remark } from "../note.ts";
import { isItem, listedParts } from "./parts-of-answer.ts";

/** Two things asked in one breath, by language. */
const TWO_QUESTIONS: Readonly<Record<string, RegExp>> = {
  en: /\b(who|what|when|where|why|how|which)\b(?:\s+\p{L}+)?\s+(?:and|or)\s+(?:\p{L}+\s+)?(who|what|when|where|why|how|which)\b/iu,
  de: /\b(wer|was|wann|wo|warum|wie|welche[rs]?|woher|wohin)\b(?:\s+\p{L}+)?\s+(?:und|oder)\s+(?:\p{L}+\s+)?(wer|was|wann|wo|warum|wie|welche[rs]?|woher|wohin)\b/iu,
  fr: /(?<!\p{L})(qui|quoi|quand|où|pourquoi|comment|quel(?:le)?s?|combien)(?:\s+\p{L}+)?\s+(?:et|ou)\s+(?:\p{L}+\s+)?(qui|quoi|quand|où|pourquoi|comment|quel(?:le)?s?|combien)(?!\p{L})/iu,
  es: /(?<!\p{L})(quién|qué|cuándo|dónde|cómo|cuál(?:es)?|cuánt[oa]s?)(?:\s+\p{L}+)?\s+(?:y|o)\s+(?:\p{L}+\s+)?(quién|qué|cuándo|dónde|por qué|cómo|cuál(?:es)?|cuánt[oa]s?)(?!\p{L})/iu,
  it: /(?<!\p{L})(chi|cosa|quando|dove|perché|come|quale|quali|quant[oaie])(?:\s+\p{L}+)?\s+(?:e|o)\s+(?:\p{L}+\s+)?(chi|cosa|quando|dove|perché|come|quale|quali|quant[oaie])(?!\p{L})/iu,
};

/** From how many items on an answer is a list; two are two answers. */
const LIST_FROM = 3;

/** `one-thing`: a prompt with two questions, an answer with two. */
export const oneThing = (fact: Fact, asked: readonly Asked[]): readonly Remark[] =>
  asked.flatMap(({ angle, prompt, answer }): readonly Remark[] => {
    const remark = (message: string): Remark => ({
      rule: "one-thing",
      angle,
      message,
      about: `${prompt}\n${answer}`,
      fix: null,
    });
    const marks = prompt.match(/[?？؟](?=\s|$|["”»)])|[?？؟](?=\p{L})/gu)?.length ?? 0;
    if (marks > 1) return [remark(`The prompt asks ${marks} questions. Make a card of each.`)];
    const pattern = TWO_QUESTIONS[languageOf(prompt, fact.language)];
    if (pattern?.test(prompt)) return [remark("The prompt asks two things at once. Make a card of each.")];
    // Only what is put as an answer: the prompt of a pair may well name two things when it is asked in reverse.
    if (angle === "reverse") return [];
    const parts = listedParts(answer);
    const two = parts.length === 2 && parts.every(isItem) && /[;；؛\n]|\s[/|]\s/u.test(answer);
    if (two) return [remark(`The answer has two parts, “${parts[0]}” and “${parts[1]}”. Ask for each by itself.`)];
    // A semicolon between clauses joins two statements; between short items it makes a list.
    const clauses = answer.split(/\s*[;；؛]\s+/u).filter((part) => part !== "");
    const joined = clauses.length > 1 && !clauses.every(isItem);
    return joined
      ? [remark(`The answer says ${clauses.length} things. Ask for one, and keep the rest as a note.`)]
      : [];
  });

/** `whole-list`: an answer that lists three things or more. */
export const wholeList = (fact: Fact, asked: readonly Asked[]): readonly Remark[] =>
  asked.flatMap(({ angle, answer }): readonly Remark[] => {
    if (angle === "reverse") return [];
    const items = listedParts(answer);
    if (items.length < LIST_FROM || !items.every(isItem)) return [];
    return [
      {
        rule: "whole-list",
        angle,
        message: `The answer lists ${items.length} things. Asked in order, each by the one before, they can be learnt singly.`,
        about: answer,
        fix: listFix(fact, items),
      },
    ];
  });

function listFix(fact: Fact, items: readonly string[]): Fix | null {
  if (fact.kind !== "pair" || items.some((item) => item.includes("\n"))) return null;
  const { kind: _kind, prompt, answer: _answer, id: _id, subject: _subject, angles: _angles, ...extras } = fact;
  const numbers = freshNumbers(items);
  const content = { ...extras, kind: "list" as const, title: prompt.replace(/[?？؟:：]+\s*$/u, ""), items, numbers };
  return { label: "Make it a list in order", content, angles: numbers.map((n) => `${listFamily}-${n}` as const) };
}

const listFamily = FIRST_ANGLES.list[0] === "next" ? "next" : "position";
