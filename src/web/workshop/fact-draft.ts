// A fact while it is being written: every field of every kind, so that changing the kind loses nothing.
import { type Card, cardsOf, possibleAngles } from "../../core/cards/cards.ts";
import type { Angle, Fact, FactContent } from "../../core/facts/fact.ts";
import { freshGaps, parseStatement, renumberGaps } from "../../core/facts/gaps.ts";
import type { FactInput } from "../client.ts";

/** The fields of the editor. */
export interface FactDraft {
  readonly kind: FactContent["kind"];
  readonly prompt: string;
  readonly answer: string;
  readonly statement: string;
  readonly name: string;
  readonly picture: string | null;
  readonly note: string;
  readonly source: string;
  readonly story: string;
  /** Separated by commas. */
  readonly tags: string;
  /** Angles from which the fact is not asked. */
  readonly off: readonly Angle[];
}

/** An empty editor. */
export const EMPTY_DRAFT: FactDraft = {
  kind: "pair",
  prompt: "",
  answer: "",
  statement: "",
  name: "",
  picture: null,
  note: "",
  source: "",
  story: "",
  tags: "",
  off: [],
};

/** The editor of a fact that is kept. */
export function draftOf(fact: Fact): FactDraft {
  const { kind, note, source, story, picture } = fact;
  const off = possibleAngles(fact).filter((angle) => !fact.angles.includes(angle));
  const common = { ...EMPTY_DRAFT, kind, note, source, story, picture, tags: fact.tags.join(", "), off };
  if (fact.kind === "pair") return { ...common, prompt: fact.prompt, answer: fact.answer };
  if (fact.kind === "statement") return { ...common, statement: fact.statement };
  return { ...common, name: fact.name };
}

/** The fact that a draft describes, as far as it goes; gaps are numbered as saving would. */
export function previewFact(draft: FactDraft, before: Fact | null): Fact {
  const { note, source, story, picture } = draft;
  const extras = { note, source, story, tags: tagsOf(draft) };
  const content = ((): FactContent => {
    switch (draft.kind) {
      case "pair":
        return { kind: "pair", prompt: draft.prompt, answer: draft.answer, picture, ...extras };
      case "picture":
        return { kind: "picture", name: draft.name, picture: picture ?? "", ...extras };
      case "statement": {
        const gaps =
          before?.kind === "statement"
            ? renumberGaps(before, draft.statement, before.gaps)
            : freshGaps(draft.statement);
        return { kind: "statement", statement: draft.statement, gaps, picture, ...extras };
      }
    }
  })();
  const angles = possibleAngles(content).filter((angle) => !draft.off.includes(angle));
  return { ...content, id: before?.id ?? "draft", subject: before?.subject ?? "draft", angles };
}

/** The cards that a draft would make. */
export const draftCards = (draft: FactDraft, before: Fact | null): readonly Card[] =>
  problemOf(draft) === null ? cardsOf(previewFact(draft, before)) : [];

/** What keeps a draft from being saved, in words; null if nothing does. */
export function problemOf(draft: FactDraft): string | null {
  switch (draft.kind) {
    case "pair":
      if (draft.prompt.trim() === "") return "The prompt is still empty.";
      return draft.answer.trim() === "" ? "The answer is still empty." : null;
    case "picture":
      if (draft.picture === null) return "The picture is still missing.";
      return draft.name.trim() === "" ? "The name is still empty." : null;
    case "statement": {
      if (draft.statement.trim() === "") return "The statement is still empty.";
      const parsed = parseStatement(draft.statement);
      return parsed.ok ? null : `Character ${parsed.error.at}: ${parsed.error.reason}.`;
    }
  }
}

/** As `problemOf`, and whether the fact is asked at all. */
export const saveProblem = (draft: FactDraft, before: Fact | null): string | null =>
  problemOf(draft) ?? (previewFact(draft, before).angles.length === 0 ? "Tick at least one way to ask it." : null);

/** What is sent to be saved. */
export function inputOf(draft: FactDraft): FactInput {
  const { note, source, story, picture } = draft;
  const extras = { note, source, story, tags: [...tagsOf(draft)] };
  switch (draft.kind) {
    case "pair":
      return { kind: "pair", prompt: draft.prompt, answer: draft.answer, picture, ...extras };
    case "picture":
      return { kind: "picture", name: draft.name, picture: picture ?? "", ...extras };
    case "statement":
      return { kind: "statement", statement: draft.statement, picture, ...extras };
  }
}

/** The angles to send; left out while none is or was switched off, so that new gaps are asked too. */
export function anglesOf(draft: FactDraft, before: Fact | null): { readonly angles?: Angle[] } {
  const wereOff = before !== null && draftOf(before).off.length > 0;
  return draft.off.length === 0 && !wereOff ? {} : { angles: [...previewFact(draft, before).angles] };
}

const tagsOf = (draft: FactDraft): readonly string[] => [
  ...new Set(
    draft.tags
      .split(",")
      .map((tag) => tag.trim())
      .filter((tag) => tag !== ""),
  ),
];
