// What the critique says of a card. It is advice: it never keeps anybody from saving.
import type { Angle, FactContent } from "../facts/fact.ts";
import { hash32 } from "../random.ts";

/** The rules by their names. */
export const RULES = [
  "one-thing",
  "short-answer",
  "one-sided",
  "same-prompt",
  "near-alike",
  "given-away",
  "yes-no",
  "bare-translation",
  "bare-number",
  "blank-size",
  "several-blanks",
  "whole-list",
  "goes-stale",
  "undescribed-picture",
  "damaged-text",
] as const;

/** The name of a rule. */
export type Rule = (typeof RULES)[number];

/** How much it matters: a warning is about a card that will hardly work, advice about one that could work better. */
export type Severity = "warning" | "advice";

/** A change made by rule: the wording that the fact would have, and its angles where these change. */
export interface Fix {
  /** What it does, as words on a button. */
  readonly label: string;
  readonly content: FactContent;
  readonly angles?: readonly Angle[];
}

/** What one rule found in one fact. */
export interface Remark {
  readonly rule: Rule;
  /** The card concerned; null for the fact as a whole. */
  readonly angle: Angle | null;
  /** What is the matter with this very card. */
  readonly message: string;
  /** The words that it is about: the note stays waved off until they change. */
  readonly about: string;
  readonly fix: Fix | null;
}

/** A remark about a fact of a subject. */
export interface Note extends Remark {
  readonly fact: string;
  readonly severity: Severity;
  /** Names the note for good, so that it can be waved off: the same words, the same key. */
  readonly key: string;
}

/** How each rule is meant; `source` only where something published says so. */
export interface RuleText {
  readonly severity: Severity;
  /** What to do, in a few words. */
  readonly title: string;
  readonly reason: string;
  readonly source: string | null;
}

const HALADYNA = "Haladyna, Downing & Rodriguez (2002), Applied Measurement in Education 15:309–334";
const UNDERWOOD = "Underwood (1957), Psychological Review 64:49–60";
const PAIVIO = "Paivio & Csapo (1973), Cognitive Psychology 5:176–206";
const GENERATION =
  "Slamecka & Graf (1978), JEP: Human Learning and Memory 4:592–604; Bertsch et al. (2007), Memory & Cognition 35:201";
const KEYWORD = "Atkinson & Raugh (1975), JEP: Human Learning and Memory 104:126–133";

/** The rules in words. */
export const RULE_TEXTS: Readonly<Record<Rule, RuleText>> = {
  "one-thing": {
    severity: "warning",
    title: "Ask one thing",
    reason: "A card that asks two things is half recalled more often than not, and half cannot be counted.",
    source: HALADYNA,
  },
  "short-answer": {
    severity: "advice",
    title: "Shorten the answer",
    reason: "A long answer is never said twice in the same words, so it cannot be told whether it was recalled.",
    source: null,
  },
  "one-sided": {
    severity: "advice",
    title: "Ask it from another side too",
    reason: "What is known in one direction only is often missing when it is needed in the other.",
    source: null,
  },
  "same-prompt": {
    severity: "warning",
    title: "Tell these prompts apart",
    reason: "Two cards with the same prompt and different answers make either answer wrong.",
    source: UNDERWOOD,
  },
  "near-alike": {
    severity: "advice",
    title: "Make these less alike",
    reason: "Prompts that look nearly alike are taken for each other: what is similar interferes most.",
    source: UNDERWOOD,
  },
  "given-away": {
    severity: "warning",
    title: "Take the answer out of the prompt",
    reason: "Nothing is recalled where the answer can be read.",
    source: GENERATION,
  },
  "yes-no": {
    severity: "warning",
    title: "Ask for the thing itself",
    reason: "Half of all guesses are right, so the card climbs without being known.",
    source: null,
  },
  "bare-translation": {
    severity: "advice",
    title: "Put a picture or a story with it",
    reason: "Two words side by side give memory nothing to hold on to; a scene in which one suggests the other does.",
    source: KEYWORD,
  },
  "bare-number": {
    severity: "advice",
    title: "Give the number a story",
    reason: "Digits have no picture of their own, and are the first to fade.",
    source: PAIVIO,
  },
  "blank-size": {
    severity: "advice",
    title: "Blank out the word that matters",
    reason: "A blank that is too large asks for many things at once; one round a small word asks for nothing.",
    source: null,
  },
  "several-blanks": {
    severity: "warning",
    title: "One blank for each card",
    reason: "Several blanks at once ask for several things, and take away what would suggest them.",
    source: HALADYNA,
  },
  "whole-list": {
    severity: "warning",
    title: "Ask the list item by item",
    reason: "A list asked whole is missed whenever a single item is missed.",
    source: HALADYNA,
  },
  "goes-stale": {
    severity: "advice",
    title: "Say when this is true",
    reason: "The card will go on asserting it long after it has changed.",
    source: null,
  },
  "undescribed-picture": {
    severity: "advice",
    title: "Describe the picture and say where it is from",
    reason: "Who cannot see it learns nothing from it, and a picture without a source cannot be checked or passed on.",
    source: null,
  },
  "damaged-text": {
    severity: "warning",
    title: "Mend the text",
    reason: "Damaged text is learnt as it stands, and is not found by a search.",
    source: null,
  },
};

/** A remark as a note about a fact. */
export const toNote = (fact: string, remark: Remark): Note => ({
  ...remark,
  fact,
  severity: RULE_TEXTS[remark.rule].severity,
  key: [remark.rule, fact, remark.angle ?? "", hash32("note", remark.about).toString(36)].join("|"),
});
