// What a paper card says, apart from its size and its marks: kept when it is printed, so that it can later be told
// whether the paper still says what the fact says.
import type { CardSide } from "../cards/cards.ts";
import type { PictureHash, Region } from "../facts/fact.ts";
import type { KitCard } from "./card-faces.ts";

/** One side as it was printed. */
export interface PrintedSide {
  readonly text: readonly { readonly text: string; readonly role: string }[];
  readonly picture: PictureHash | null;
  readonly cover: Region | null;
  /** Whether it says that there is a sound. */
  readonly sound: boolean;
}

/** Both sides of a card as they were printed. It is stored, so its shape is never changed without a migration. */
export interface PrintedFace {
  readonly prompt: PrintedSide;
  readonly answer: PrintedSide;
  /** What stands small below the answer. */
  readonly notes: readonly string[];
}

/** What is printed of a card. The name of its subject, its size and its marks are left to each printing. */
export const printedFace = (card: KitCard): PrintedFace => ({
  prompt: sideOf(card.prompt),
  answer: sideOf(card.answer),
  notes: [card.note, card.story, card.why, card.source, card.pictureSource, card.pictureLicence].filter(
    (line) => line !== "",
  ),
});

const sideOf = ({ text, picture, cover, sound }: CardSide): PrintedSide => ({
  text: text.map((run) => ({ text: run.text, role: run.role })),
  picture,
  cover: cover && { x: cover.x, y: cover.y, width: cover.width, height: cover.height },
  sound: sound !== null,
});

/** Whether two faces say and show the same. */
export const isSameFace = (a: PrintedFace, b: PrintedFace): boolean => faceText(a) === faceText(b);

/** A face as text, equal for equal faces. */
export const faceText = (face: PrintedFace): string => JSON.stringify(face);

/** A part of a face in which the paper and the fact differ. */
export interface FaceChange {
  readonly part: "prompt" | "answer" | "notes";
  readonly before: string;
  readonly after: string;
  /** Whether another picture, or another part of it, is shown. */
  readonly picture: boolean;
}

/** In what two faces differ; empty if they are the same. */
export function faceChanges(before: PrintedFace, after: PrintedFace): readonly FaceChange[] {
  const changes: FaceChange[] = [];
  for (const part of ["prompt", "answer"] as const) {
    const [one, other] = [before[part], after[part]];
    if (JSON.stringify(one) === JSON.stringify(other)) continue;
    const picture = one.picture !== other.picture || JSON.stringify(one.cover) !== JSON.stringify(other.cover);
    changes.push({ part, before: sideWords(one), after: sideWords(other), picture });
  }
  const notes = [before.notes.join("\n"), after.notes.join("\n")] as const;
  if (notes[0] !== notes[1]) changes.push({ part: "notes", before: notes[0], after: notes[1], picture: false });
  return changes;
}

/** A side in words; a blank as it is drawn. */
const sideWords = ({ text, sound }: PrintedSide): string =>
  [...text.map((run) => (run.role === "blank" ? "_____" : run.text)), sound ? " (a sound)" : ""].join("").trim();
