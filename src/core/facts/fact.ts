// What a fact is: one thing to be known, from which cards are made.

/** The SHA-256 of a stored picture, lower-case hexadecimal. */
export type PictureHash = string;

/** What every fact may carry besides the thing to be known. Empty strings mean "none". */
export interface FactExtras {
  readonly note: string;
  readonly source: string;
  readonly story: string;
  readonly tags: readonly string[];
  readonly picture: PictureHash | null;
}

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

/** The wording of a fact, without its identity. */
export type FactContent = PairContent | StatementContent | PictureContent;

/** One way of asking a fact. */
export type Angle = "forward" | "reverse" | "picture-to-name" | "name-to-picture" | `gap-${number}`;

/** A fact as it is kept: wording, identity, and the angles from which it is asked. */
export type Fact = FactContent & {
  readonly id: string;
  readonly subject: string;
  readonly angles: readonly Angle[];
};
