// Facts of the night sky, ready to be stored.
import { factRecord } from "../../src/app/fact-record.ts";
import type { FactRecord } from "../../src/app/ports.ts";
import {
  type Fact,
  type FactExtras,
  NO_EXTRAS,
  type PairContent,
  type StatementContent,
} from "../../src/core/facts/fact.ts";

/** A fact that carries nothing else. */
export const BARE: FactExtras = NO_EXTRAS;

/** Bright stars and the constellations in which they stand. */
export const STARS: readonly (readonly [star: string, constellation: string])[] = [
  ["Vega", "Lyra"],
  ["Deneb", "Cygnus"],
  ["Altair", "Aquila"],
  ["Rigel", "Orion"],
  ["Spica", "Virgo"],
  ["Regulus", "Leo"],
  ["Antares", "Scorpius"],
  ["Capella", "Auriga"],
];

/** What is asked about a star. */
export const starPair = (n: number, extras: Partial<FactExtras> = {}): PairContent => {
  const [prompt, answer] = STARS[n % STARS.length] as readonly [string, string];
  return { ...BARE, ...extras, kind: "pair", prompt, answer };
};

/** A sentence with two gaps. */
export const PLEIADES: StatementContent = {
  ...BARE,
  kind: "statement",
  statement: "The Pleiades are an open cluster in [Taurus], listed as [M45].",
  gaps: [1, 2],
};

/** A pair as a stored fact. */
export const storedPair = (id: string, subject: string, change: Partial<PairContent> = {}): FactRecord => {
  const fact: Fact = { ...starPair(0), ...change, id, subject, angles: ["forward", "reverse"] };
  return factRecord(fact);
};
