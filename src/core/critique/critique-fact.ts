// What the rules say about one fact by itself, at once while it is written.
import type { Fact } from "../facts/fact.ts";
import { type Asked, askedOf } from "./asked.ts";
import { type Note, type Remark, toNote } from "./note.ts";
import { givenAway, shortAnswer } from "./rules/answers.ts";
import { bareNumber } from "./rules/bare-number.ts";
import { blankSize, severalBlanks } from "./rules/blanks.ts";
import { damagedText } from "./rules/damaged-text.ts";
import { goesStale } from "./rules/goes-stale.ts";
import { oneThing, wholeList } from "./rules/one-at-a-time.ts";
import { bareTranslation, oneSided } from "./rules/sides.ts";
import { undescribedPicture } from "./rules/undescribed-picture.ts";
import { yesNo } from "./rules/yes-no.ts";

const CHECKS: readonly ((fact: Fact, asked: readonly Asked[]) => readonly Remark[])[] = [
  damagedText,
  oneThing,
  wholeList,
  shortAnswer,
  givenAway,
  yesNo,
  severalBlanks,
  blankSize,
  bareNumber,
  bareTranslation,
  goesStale,
  undescribedPicture,
  oneSided,
];

/** Notes about a fact that need no other fact: every rule but `same-prompt` and `near-alike`. Never throws. */
export function critiqueFact(fact: Fact): readonly Note[] {
  const asked = askedOf(fact);
  return CHECKS.flatMap((check) => check(fact, asked)).map((remark) => toNote(fact.id, remark));
}
