// What the rules say about the facts of a subject, those that look at several facts included.
import { comparableText } from "../facts/content-key.ts";
import type { Angle, Fact } from "../facts/fact.ts";
import { foldText } from "../text/fold-text.ts";
import { runsOn, wordsOf } from "../text/words-of.ts";
import { askedOf } from "./asked.ts";
import { critiqueFact } from "./critique-fact.ts";
import { nearPairs } from "./near-words.ts";
import { type Fix, type Note, type Remark, toNote } from "./note.ts";

/** Which notes are wanted. */
export interface CritiqueChoices {
  /** Keys of notes that were waved off: they are left out. */
  readonly wavedOff?: ReadonlySet<string>;
}

/** A card as it is compared with others. */
interface Compared {
  readonly fact: Fact;
  readonly angle: Angle;
  readonly prompt: string;
  readonly answer: string;
  /** What is seen or heard beside the words of the prompt. */
  readonly beside: string;
}

/** Every note about these facts, fact by fact in the order in which they come. */
export function critiqueFacts(facts: readonly Fact[], { wavedOff }: CritiqueChoices = {}): readonly Note[] {
  const compared = facts.flatMap(comparedOf);
  const among = [...samePrompts(compared), ...nearAlike(compared)];
  const byFact = new Map<string, Note[]>();
  for (const { fact, ...remark } of among) {
    const notes = byFact.get(fact.id);
    if (notes) notes.push(toNote(fact.id, remark));
    else byFact.set(fact.id, [toNote(fact.id, remark)]);
  }
  const clashes = clashesWhenReversed(facts);
  return facts
    .flatMap((fact) => [
      ...critiqueFact(fact).filter(({ rule }) => rule !== "one-sided" || !clashes(fact)),
      ...(byFact.get(fact.id) ?? []),
    ])
    .filter((note) => !wavedOff?.has(note.key));
}

/** Whether taking the advice to ask a pair from its other side would make another card with the prompt of one that is there. */
function clashesWhenReversed(facts: readonly Fact[]): (fact: Fact) => boolean {
  let owners: ReadonlyMap<string, ReadonlySet<string>> | undefined;
  return (fact) => {
    if (fact.kind !== "pair") return false;
    // Worked out only where somebody asks.
    owners ??= ownersBySide(facts);
    const other = fact.angles.includes("forward") ? fact.answer : fact.prompt;
    return (owners.get(sameAs(other))?.size ?? 0) > 1;
  };
}

/** For every side of a pair the facts that have it. */
function ownersBySide(facts: readonly Fact[]): ReadonlyMap<string, ReadonlySet<string>> {
  const owners = new Map<string, Set<string>>();
  for (const fact of facts) {
    if (fact.kind !== "pair") continue;
    for (const side of [sameAs(fact.prompt), sameAs(fact.answer)])
      owners.set(side, (owners.get(side) ?? new Set()).add(fact.id));
  }
  return owners;
}

/** Prompts and answers that are equal so are taken for the same: capitals and the sign at the end make no difference. */
function sameAs(text: string): string {
  const compared = comparableText(text).toLowerCase();
  const ended = /[?:.…!？：。！]$/u.test(compared)
    ? compared.replace(/(?<![\s?:.…!？：。！])[\s?:.…!？：。！]+$/u, "")
    : compared;
  return ended === "" ? compared : ended;
}

/** Cards that are asked in words, or with a picture or sound: what is seen or heard is part of the prompt. */
const comparedOf = (fact: Fact): readonly Compared[] =>
  askedOf(fact).map(({ card, angle, prompt, answer }) => {
    const { picture, sound, cover } = card.prompt;
    const beside = [picture ?? "", sound ?? "", cover ? JSON.stringify(cover) : ""].join(" ").trim();
    const shown = card.answer.picture !== null && answer === "" ? card.answer.picture : answer;
    return { fact, angle, prompt: `${prompt}\u0000${beside}`, answer: shown, beside };
  });

type Found = Remark & { readonly fact: Fact };

const words = ({ prompt }: Compared): string => prompt.slice(0, prompt.indexOf("\u0000"));

function samePrompts(cards: readonly Compared[]): readonly Found[] {
  const groups = new Map<string, Compared[]>();
  for (const card of cards) {
    const key = `${sameAs(words(card))}\u0000${card.beside}`;
    const group = groups.get(key);
    if (group) group.push(card);
    else groups.set(key, [card]);
  }
  return [...groups.values()].flatMap((group): readonly Found[] => {
    const answers = new Set(group.map((card) => foldText(sameAs(card.answer))));
    if (answers.size < 2) return [];
    return group.map((card): Found => {
      const other = group.find((one) => foldText(sameAs(one.answer)) !== foldText(sameAs(card.answer)));
      const said = other && words(card) !== "" ? `, such as “${other.answer}”` : "";
      return {
        rule: "same-prompt",
        fact: card.fact,
        angle: card.angle,
        message: `${group.length === 2 ? "Another card has" : `${group.length - 1} other cards have`} this very prompt and another answer${said}.`,
        about: card.prompt,
        fix: dropAngle(card),
      };
    });
  });
}

/** A card that is one of several of its fact can go without the fact being lost. */
function dropAngle({ fact, angle }: Compared): Fix | null {
  if (fact.angles.length < 2 || angle !== "reverse") return null;
  const { id: _id, subject: _subject, angles, ...content } = fact;
  return { label: "Ask it one way only", content, angles: angles.filter((one) => one !== angle) };
}

function nearAlike(cards: readonly Compared[]): readonly Found[] {
  const byPrompt = new Map<string, { readonly asked: readonly string[]; readonly cards: Compared[] }>();
  for (const card of cards) {
    // A picture or a sound beside the words tells prompts apart.
    if (words(card) === "" || !card.prompt.endsWith("\u0000")) continue;
    const folded = foldText(words(card))
      .replace(/(?<![\p{P}\s])[\p{P}\s]+$/u, "")
      .replace(/\s+/gu, " ");
    const same = byPrompt.get(folded);
    if (same) same.cards.push(card);
    else byPrompt.set(folded, { asked: toWords(folded), cards: [card] });
  }
  const prompts = [...byPrompt.values()].filter(({ asked }) => asked.length <= LONGEST_PROMPT);
  const near = prompts.map((): Compared[] => []);
  for (const [a, b] of nearPairs(prompts.map(({ asked }) => asked))) {
    near[a]?.push(...(prompts[b]?.cards.slice(0, MOST_NAMED) ?? []));
    near[b]?.push(...(prompts[a]?.cards.slice(0, MOST_NAMED) ?? []));
  }
  return prompts.flatMap((some, i) => some.cards.flatMap((card) => nearRemark(card, near[i] ?? [])));
}

/**
 * Where words run on they are told by dictionary, or any two sentences of a form would be alike; a name in katakana,
 * which no dictionary knows, stays whole.
 */
const toWords = (prompt: string): readonly string[] =>
  runsOn(prompt)
    ? (prompt.normalize("NFC").match(/[\p{Script=Katakana}ー]+|[^\p{Script=Katakana}ー]+/gu) ?? []).flatMap((run) =>
        /\p{Script=Katakana}/u.test(run) ? [run] : wordsOf(run),
      )
    : prompt.split(" ");

/** A text of more words is not taken for another at a glance; and each word takes a look at all the others. */
const LONGEST_PROMPT = 60;

/** How many other prompts a note names. */
const MOST_NAMED = 3;

function nearRemark(card: Compared, near: readonly Compared[]): readonly Found[] {
  const others = near.filter((one) => one.fact !== card.fact && foldText(one.answer) !== foldText(card.answer));
  const named = [...new Set(others.map(words))].sort();
  const [first] = named;
  if (first === undefined) return [];
  const list = named.slice(0, MOST_NAMED).map((one) => `“${one}”`);
  const more = named.length > MOST_NAMED ? ` and ${named.length - MOST_NAMED} more` : "";
  const message = `“${words(card)}” is easily taken for ${list.join(", ")}${more}. Add to each what tells them apart.`;
  const about = `${words(card)}\n${first}`;
  return [{ rule: "near-alike", fact: card.fact, angle: card.angle, message, about, fix: null }];
}
