// What results from paper come to, in sentences.
import type { PaperOutcome } from "../../app/views.ts";
import { capital, counted } from "../words.ts";

/** "5 recalled cards move on, 1 missed card goes back to compartment 1." */
export function outcomeWords({ recalled, missed, kept, introduced, left, overtaken }: PaperOutcome): string {
  const parts = [
    part(recalled - kept, "recalled card", "moves on", "move on"),
    part(kept, "card", "is kept for good", "are kept for good"),
    part(missed, "missed card", "goes back to compartment 1", "go back to compartment 1"),
    part(introduced, "new card", "comes into the box", "come into the box"),
    part(left, "card", "stays due", "stay due"),
  ].filter((one) => one !== "");
  const moves = parts.length > 0 ? `${capital(parts.join(", "))}.` : "";
  return [moves, overtakenWords(overtaken)].filter((one) => one !== "").join(" ");
}

const part = (n: number, noun: string, does: string, doIt: string): string =>
  n > 0 ? `${counted(n, noun)} ${n === 1 ? does : doIt}` : "";

function overtakenWords(answers: number): string {
  if (answers === 0) return "";
  const such = counted(answers, "answer of a later day no longer counts", "answers of later days no longer count");
  return `${such}, because the cards were not due any more by then.`;
}
