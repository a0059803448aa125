// What a fact is: one thing to be known, from which cards are made.

/** The SHA-256 of a stored picture, lower-case hexadecimal. */
export type PictureHash = string;

/** The SHA-256 of a stored sound, lower-case hexadecimal. */
export type SoundHash = string;

/** What every fact may carry besides the thing to be known. Empty strings mean "none". */
export interface FactExtras {
  readonly note: string;
  readonly source: string;
  readonly story: string;
  /** A question that asks for the reason; it is shown with the answer. */
  readonly why: string;
  readonly tags: readonly string[];
  /** The language of its words as a BCP 47 tag. */
  readonly language: string;
  readonly picture: PictureHash | null;
  /** What the picture shows, for who cannot see it. */
  readonly pictureAlt: string;
  readonly pictureSource: string;
  readonly pictureLicence: string;
  readonly sound: SoundHash | null;
}

/** A fact that carries nothing else. */
export const NO_EXTRAS: FactExtras = {
  note: "",
  source: "",
  story: "",
  why: "",
  tags: [],
  language: "",
  picture: null,
  pictureAlt: "",
  pictureSource: "",
  pictureLicence: "",
  sound: null,
};

/** Two things that belong together: a word and its meaning, a star and its constellation. */
export interface PairContent extends FactExtras {
  readonly kind: "pair";
  readonly prompt: string;
  readonly answer: string;
}

/** A sentence with one or more [gaps]; `gaps` numbers them in order of appearance (see `gaps.ts`). */
export interface StatementContent extends FactExtras {
  readonly kind: "statement";
  readonly statement: string;
  readonly gaps: readonly number[];
}

/** A picture and its name. */
export interface PictureContent extends FactExtras {
  readonly kind: "picture";
  readonly name: string;
  readonly picture: PictureHash;
}

/** Items in a fixed order; `numbers` numbers them as `gaps` does gaps (see `list-numbers.ts`). */
export interface ListContent extends FactExtras {
  readonly kind: "list";
  readonly title: string;
  readonly items: readonly string[];
  readonly numbers: readonly number[];
}

/** A formula in TeX notation, without delimiters, and its name. */
export interface FormulaContent extends FactExtras {
  readonly kind: "formula";
  readonly name: string;
  readonly formula: string;
}

/** What a typed word is held against: whether accents and capital letters count. */
export interface SpellingRule {
  readonly accents: "count" | "ignore";
  readonly letterCase: "count" | "ignore";
}

/** Everything counts. */
export const EXACT_SPELLING: SpellingRule = { accents: "count", letterCase: "count" };

/** A word to be written as it is spelt, on a clue that is read, or on the fact's sound. */
export interface SpellingContent extends FactExtras, SpellingRule {
  readonly kind: "spelling";
  readonly clue: string;
  readonly word: string;
}

/** A sound and its name. */
export interface SoundContent extends FactExtras {
  readonly kind: "sound";
  readonly name: string;
  readonly sound: SoundHash;
}

/** A rectangle of a picture, from its top left corner, as shares of the picture's width and height: 0…1. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A named region of a picture; the number names it for good. */
export interface PictureLabel extends Region {
  readonly number: number;
  readonly name: string;
}

/** A picture with labels, covered one at a time. */
export interface LabelledContent extends FactExtras {
  readonly kind: "labelled";
  readonly picture: PictureHash;
  readonly labels: readonly PictureLabel[];
}

/** The wording of a fact, without its identity. */
export type FactContent =
  | PairContent
  | StatementContent
  | PictureContent
  | ListContent
  | FormulaContent
  | SpellingContent
  | SoundContent
  | LabelledContent;

/** An angle from which each part of a fact is asked by itself. */
export type PartAngle = "gap" | "next" | "previous" | "position" | "label";

/** One way of asking a fact. A number at its end is that of the gap, item or label that is asked for. */
export type Angle =
  | "forward"
  | "reverse"
  | "picture-to-name"
  | "name-to-picture"
  | "name-to-formula"
  | "formula-to-name"
  | "spelling"
  | "sound-to-name"
  | "name-to-sound"
  | `${PartAngle}-${number}`;

/** A fact as it is kept: wording, identity, and the angles from which it is asked. */
export type Fact = FactContent & {
  readonly id: string;
  readonly subject: string;
  readonly angles: readonly Angle[];
};
