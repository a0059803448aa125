// A fact while it is being written: every field of every kind, so that changing the kind loses nothing.
import { type Card, cardsOf, possibleAngles } from "../../core/cards/cards.ts";
import { anglesAfter, defaultAngles } from "../../core/cards/default-angles.ts";
import { contentProblem } from "../../core/facts/check-content.ts";
import { type Angle, type Fact, type FactContent, NO_EXTRAS, type PictureLabel } from "../../core/facts/fact.ts";
import { freshGaps, renumberGaps } from "../../core/facts/gaps.ts";
import { freshNumbers, renumberItems } from "../../core/facts/list-numbers.ts";
import type { FactInput } from "../client.ts";
import { capital } from "../words.ts";

/** The fields of the editor. */
export interface FactDraft {
  readonly kind: FactContent["kind"];
  readonly prompt: string;
  readonly answer: string;
  readonly statement: string;
  readonly name: string;
  readonly title: string;
  /** One a line. */
  readonly items: string;
  readonly formula: string;
  readonly clue: string;
  readonly word: string;
  readonly accents: "count" | "ignore";
  readonly letterCase: "count" | "ignore";
  readonly labels: readonly PictureLabel[];
  readonly picture: string | null;
  readonly pictureAlt: string;
  readonly pictureSource: string;
  readonly pictureLicence: string;
  readonly sound: string | null;
  readonly note: string;
  readonly source: string;
  readonly story: string;
  readonly why: string;
  readonly language: string;
  /** Separated by commas. */
  readonly tags: string;
  /** Angles switched on and off by hand; the others follow the kind, and what was asked before. */
  readonly on: readonly Angle[];
  readonly off: readonly Angle[];
}

/** An empty editor. */
export const EMPTY_DRAFT: FactDraft = {
  ...NO_EXTRAS,
  kind: "pair",
  prompt: "",
  answer: "",
  statement: "",
  name: "",
  title: "",
  items: "",
  formula: "",
  clue: "",
  word: "",
  accents: "count",
  letterCase: "count",
  labels: [],
  tags: "",
  on: [],
  off: [],
};

/** The editor of a fact that is kept. */
export function draftOf(fact: Fact): FactDraft {
  const { id, subject, angles, tags, ...content } = fact;
  const common = { ...EMPTY_DRAFT, tags: tags.join(", ") };
  switch (content.kind) {
    case "statement": {
      const { gaps, ...rest } = content;
      return { ...common, ...rest };
    }
    case "list": {
      const { numbers, items, ...rest } = content;
      return { ...common, ...rest, items: items.join("\n") };
    }
    default:
      return { ...common, ...content };
  }
}

/** What a draft says, as far as it goes; parts are numbered as saving would, as far as that can be known here. */
function contentOf(draft: FactDraft, before: Fact | null): FactContent {
  const { note, source, story, why, language, picture, pictureAlt, pictureSource, pictureLicence, sound } = draft;
  const about = { note, source, story, why, language, pictureAlt, pictureSource, pictureLicence };
  const extras = { ...about, tags: tagsOf(draft), picture, sound };
  const { kind } = draft;
  switch (kind) {
    case "pair":
      return { ...extras, kind, prompt: draft.prompt, answer: draft.answer };
    case "picture":
      return { ...extras, kind, name: draft.name, picture: picture ?? "" };
    case "sound":
      return { ...extras, kind, name: draft.name, sound: sound ?? "" };
    case "formula":
      return { ...extras, kind, name: draft.name, formula: draft.formula };
    case "spelling": {
      const { clue, word, accents, letterCase } = draft;
      return { ...extras, kind, clue, word, accents, letterCase };
    }
    case "labelled":
      return { ...extras, kind, picture: picture ?? "", labels: draft.labels };
    case "statement": {
      const { statement } = draft;
      const known = before?.kind === kind ? renumberGaps(before, statement, before.gaps) : freshGaps(statement);
      return { ...extras, kind, statement, gaps: known };
    }
    case "list": {
      const items = itemsOf(draft);
      const known = before?.kind === kind ? renumberItems(before, items, before.numbers) : freshNumbers(items);
      return { ...extras, kind, title: draft.title, items, numbers: known };
    }
  }
}

/** The fact that a draft describes. */
export function previewFact(draft: FactDraft, before: Fact | null): Fact {
  const content = contentOf(draft, before);
  const usual = before ? anglesAfter(before, content) : defaultAngles(content);
  const angles = possibleAngles(content).filter(
    (angle) => draft.on.includes(angle) || (usual.includes(angle) && !draft.off.includes(angle)),
  );
  return { ...content, id: before?.id ?? "draft", subject: before?.subject ?? "draft", angles };
}

/** The cards that a draft would make. */
export const draftCards = (draft: FactDraft, before: Fact | null): readonly Card[] =>
  problemOf(draft) === null ? cardsOf(previewFact(draft, before)) : [];

/** What keeps a draft from being saved, in words; null if nothing does. */
export function problemOf(draft: FactDraft): string | null {
  if ((draft.kind === "picture" || draft.kind === "labelled") && draft.picture === null)
    return "The picture is still missing.";
  if (draft.kind === "sound" && draft.sound === null) return "The sound is still missing.";
  const problem = contentProblem(contentOf(draft, null));
  if (!problem) return null;
  return problem.at === null ? `${capital(problem.reason)}.` : `Character ${problem.at}: ${problem.reason}.`;
}

/** As `problemOf`, and whether the fact is asked at all. */
export const saveProblem = (draft: FactDraft, before: Fact | null): string | null =>
  problemOf(draft) ?? (previewFact(draft, before).angles.length === 0 ? "Tick at least one way to ask it." : null);

/** What is sent to be saved. */
export const inputOf = (draft: FactDraft, before: Fact | null): FactInput =>
  // The same thing, but for lists that may be written to.
  contentOf(draft, before) as FactInput;

/** The angles to send; left out while none was switched by hand, so that the server settles them for new parts too. */
export const anglesOf = (draft: FactDraft, before: Fact | null): { readonly angles?: Angle[] } =>
  draft.on.length === 0 && draft.off.length === 0 ? {} : { angles: [...previewFact(draft, before).angles] };

/** The draft with angles switched on or off; what it would be anyway is not noted. */
export function switchAngles(draft: FactDraft, before: Fact | null, angles: readonly Angle[], on: boolean): FactDraft {
  const others = {
    on: draft.on.filter((angle) => !angles.includes(angle)),
    off: draft.off.filter((angle) => !angles.includes(angle)),
  };
  const usual = previewFact({ ...draft, on: [], off: [] }, before).angles;
  const noted = angles.filter((angle) => usual.includes(angle) !== on);
  return {
    ...draft,
    ...(on ? { ...others, on: [...others.on, ...noted] } : { ...others, off: [...others.off, ...noted] }),
  };
}

/** The editor of a fact that is to be asked from exactly its angles; `before` is what is saved of it. */
export function draftAsking(fact: Fact, before: Fact | null): FactDraft {
  const asked = switchAngles(draftOf(fact), before, fact.angles, true);
  const rest = possibleAngles(fact).filter((angle) => !fact.angles.includes(angle));
  return switchAngles(asked, before, rest, false);
}

/** The items of a list: lines that are not empty. */
const itemsOf = (draft: FactDraft): readonly string[] =>
  draft.items
    .split("\n")
    .map((item) => item.trim())
    .filter((item) => item !== "");

const tagsOf = (draft: FactDraft): readonly string[] => [
  ...new Set(
    draft.tags
      .split(",")
      .map((tag) => tag.trim())
      .filter((tag) => tag !== ""),
  ),
];
