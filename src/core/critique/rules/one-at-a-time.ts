// One thing a card: no second question, no second answer, no list asked whole.
import { FIRST_ANGLES } from "../../cards/default-angles.ts";
import type { Fact } from "../../facts/fact.ts";
import { freshNumbers } from "../../facts/list-numbers.ts";
import type { Asked } from "../asked.ts";
import type { Fix, Remark } from "../note.ts";
import { withoutQuotations } from "../quotations.ts";
import { isDate } from "./dates.ts";
import { isDescription, isItem, isMarkedList, listedParts } from "./parts-of-answer.ts";
import { asksTwice } from "./two-questions.ts";

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
    // A question that is quoted is not asked.
    const marks = withoutQuotations(prompt).match(/[?？؟](?=\s|$|["”»)])|[?？؟](?=\p{L})/gu)?.length ?? 0;
    if (marks > 1) return [remark(`The prompt asks ${marks} questions. Make a card of each.`)];
    if (asksTwice(withoutQuotations(prompt), fact.language))
      return [remark("The prompt asks two things at once. Make a card of each.")];
    // Only what is put as an answer: the prompt of a pair may well name two things when it is asked in reverse.
    if (angle === "reverse") return [];
    const parts = listedParts(answer);
    // A second line in brackets says something of the first.
    const second = !/^[([（]/u.test(parts[1] ?? "");
    const two = parts.length === 2 && second && parts.every(isItem) && /[;；؛\n]|\s[/|]\s/u.test(answer);
    if (two) return [remark(`The answer has two parts, “${parts[0]}” and “${parts[1]}”. Ask for each by itself.`)];
    // A semicolon between clauses joins two statements; between short items it makes a list.
    const clauses = answer.split(/(?<!\s)\s*[;；؛]\s+/u).filter((part) => part !== "");
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
    if (items.length < LIST_FROM || !(items.every(isItem) || isMarkedList(answer))) return [];
    if (isDescription(items) || isDate(items.join(" "))) return [];
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
  const content = {
    ...extras,
    kind: "list" as const,
    title: prompt.replace(/(?<![?？؟:：])[?？؟:：]+\s*$/u, ""),
    items,
    numbers,
  };
  return { label: "Make it a list in order", content, angles: numbers.map((n) => `${listFamily}-${n}` as const) };
}

const listFamily = FIRST_ANGLES.list[0] === "next" ? "next" : "position";
