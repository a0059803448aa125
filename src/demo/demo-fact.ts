// What the demo subject is made of.
import type { Angle, FactContent, PictureHash, SoundHash } from "../core/facts/fact.ts";

/** A fact of the demo subject and the angles from which it is asked. */
export interface DemoFact {
  readonly content: FactContent;
  readonly angles: readonly Angle[];
}

/** The stored hashes of what the demo shows and lets hear: pictures by constellation, sounds by pulsar. */
export interface DemoHashes {
  readonly pictures: ReadonlyMap<string, PictureHash>;
  readonly sounds: ReadonlyMap<string, SoundHash>;
}
