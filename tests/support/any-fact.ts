// Facts of every kind, from texts that whoever asks chooses.
import fc from "fast-check";
import { possibleAngles } from "../../src/core/cards/cards.ts";
import type { Fact, FactContent } from "../../src/core/facts/fact.ts";

/** What the facts are made of. */
export interface FactParts {
  /** Any text that a fact may carry. */
  readonly text: fc.Arbitrary<string>;
  /** A text that states something, so it is not empty. */
  readonly filled: fc.Arbitrary<string>;
  /** As `filled`, on one line. */
  readonly line: fc.Arbitrary<string>;
  readonly statement: fc.Arbitrary<string>;
  readonly tag: fc.Arbitrary<string>;
  readonly picture: string;
}

const SOUND = "5".repeat(64);

/** A share of a picture's width or height, as far as both places of a rectangle fit into it. */
const half = fc.double({ min: 0, max: 0.5, noNaN: true });

/** The wording of a fact of any kind; `gaps` gives a statement's numbers. */
export function anyContent(
  parts: FactParts,
  gaps: (statement: string) => readonly number[],
): fc.Arbitrary<FactContent> {
  const { text, filled, line, picture } = parts;
  const extras = {
    note: text,
    source: text,
    story: text,
    why: text,
    tags: fc.uniqueArray(parts.tag, { maxLength: 4 }),
    language: fc.constantFrom("", "la", "pt-BR"),
    picture: fc.constantFrom(null, picture),
    pictureAlt: text,
    pictureSource: text,
    pictureLicence: text,
    sound: fc.constantFrom(null, SOUND),
  };
  const rule = fc.constantFrom("count" as const, "ignore" as const);
  const label = { name: line, x: half, y: half, width: half.map((w) => w + 0.001), height: half.map((h) => h + 0.001) };
  const kind = <K extends FactContent["kind"]>(name: K) => fc.constant(name);
  return fc.oneof(
    fc.record({ ...extras, kind: kind("pair"), prompt: filled, answer: filled }),
    fc
      .record({ ...extras, kind: kind("statement"), statement: parts.statement })
      .map((fact) => ({ ...fact, gaps: gaps(fact.statement) })),
    fc.record({ ...extras, kind: kind("picture"), name: filled, picture: fc.constant(picture) }),
    fc
      .record({ ...extras, kind: kind("list"), title: filled, items: fc.array(line, { minLength: 2, maxLength: 5 }) })
      .map((fact) => ({ ...fact, numbers: fact.items.map((_, i) => i + 1) })),
    fc.record({ ...extras, kind: kind("formula"), name: filled, formula: filled }),
    fc.record({ ...extras, kind: kind("spelling"), clue: filled, word: filled, accents: rule, letterCase: rule }),
    fc.record({ ...extras, kind: kind("sound"), name: filled, sound: fc.constant(SOUND) }),
    fc
      .record({
        ...extras,
        kind: kind("labelled"),
        picture: fc.constant(picture),
        labels: fc.array(fc.record(label), { minLength: 1, maxLength: 3 }),
      })
      .map((fact) => ({ ...fact, labels: fact.labels.map((one, i) => ({ number: i + 1, ...one })) })),
  );
}

/** A fact of that wording, asked from every angle. */
export const asFact = (content: FactContent, id: string, subject: string): Fact => ({
  ...content,
  id,
  subject,
  angles: possibleAngles(content),
});
