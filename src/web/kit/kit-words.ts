// What the Kit page says: parts, progress, and how paper stands to its cards.
import type { OutdatedCard, PaperCardsView } from "../../app/print-versions.ts";
import type { KitJobView, KitPreview } from "../../app/print-views.ts";
import type { KitPart } from "../../core/kit/kit-pages.ts";
import { count, counted } from "../words.ts";
import type { SettledDraft } from "./kit-draft.ts";

/** What each part is, and what it is good for. */
export const PART_WORDS: Readonly<Record<KitPart, { readonly name: string; readonly about: string }>> = {
  calibration: { name: "Calibration page", about: "to see whether your printer lays backs behind their fronts" },
  instructions: { name: "Instructions", about: "one page: cutting, setting up the box, practising" },
  cards: { name: "Cards", about: "with a front and a back" },
  dividers: { name: "Dividers", about: "with tabs, one for each bundle of the box" },
  ruler: { name: "Chart as a ruler", about: "a poster: which compartments on which day" },
  chart: { name: "Chart as a table", about: "the same, day by day, in numbers" },
  calendar: { name: "Wall calendar", about: "real dates with their chart day, piles and rest days" },
  pocket: { name: "Pocket calendar", about: "the same dates in the size of a card" },
  sheet: { name: "Sitting sheet", about: "today's cards with boxes to tick for those that were missed" },
};

/** What will be printed: "75 sheets, 546 cards", or why nothing. */
export function kitWords({ parts, cards, boxes }: KitPreview, draft: SettledDraft): string {
  const sheets = parts.reduce((sum, part) => sum + part.sheets, 0);
  if (draft.parts.length === 0) return "Nothing is ticked yet";
  const each = draft.parts.includes("cards") && cards > 0 ? `, ${counted(cards, "card")}` : "";
  if (boxes > 1 && sheets > 0) return `${counted(boxes, "box", "boxes")} of ${counted(sheets, "sheet")}${each} each`;
  if (sheets > 0) return `${counted(sheets, "sheet")}${each}`;
  return draft.only === "changed" ? "Nothing needs printing: your paper is up to date" : "There is nothing to print";
}

/** What is being done for a PDF. */
export function stepWords({ step, done, total }: KitJobView): string {
  switch (step) {
    case "pictures":
      return total > 0 ? `Making pictures ready: ${count(done)} of ${count(total)}` : "Making pictures ready";
    case "setting":
      return "Setting the pages";
    case "finishing":
      return "Finishing the file";
    case "names":
      return `Boxes made: ${count(done)} of ${count(total)}`;
  }
}

/** A size of a file in words. */
export function bytesWords(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1_000))} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** How the paper stands, in sentences. */
export function paperWords({ current, changed, lost, damaged, withdrawn, ...rest }: PaperCardsView["counts"]): string {
  const wrong = [
    changed > 0 ? `${count(changed)} changed since` : "",
    lost > 0 ? `${count(lost)} lost` : "",
    damaged > 0 ? `${count(damaged)} damaged` : "",
    withdrawn > 0 ? `${count(withdrawn)} not asked any more` : "",
  ].filter((part) => part !== "");
  const fresh = rest.new > 0 ? ` ${counted(rest.new, "card")} ${are(rest.new)} not on paper yet.` : "";
  const right = `${counted(current, "paper card")} ${are(current)} as ${current === 1 ? "it" : "they"} should be`;
  return `${right}${wrong.length > 0 ? `; ${wrong.join(", ")}` : ""}.${fresh}`;
}

const are = (number: number): string => (number === 1 ? "is" : "are");

/** Why a paper card is not as it should be. */
export const STATE_WORDS: Readonly<Record<OutdatedCard["state"], string>> = {
  new: "not on paper yet",
  current: "up to date",
  changed: "says something else by now",
  lost: "lost",
  damaged: "damaged",
  withdrawn: "not asked any more: take it out of the paper box",
};

/** How many paper cards are not as they should be. */
export const outdatedCount = ({ changed, lost, damaged, withdrawn }: PaperCardsView["counts"]): number =>
  changed + lost + damaged + withdrawn;

/** Says that some paper cards are not as they should be. */
export const outdatedWords = (number: number): string =>
  number === 1 ? "1 paper card is out of date." : `${count(number)} paper cards are out of date.`;

/** How many cards have to be printed so that the paper is whole and up to date. */
export const toPrint = ({ changed, lost, damaged, ...rest }: PaperCardsView["counts"]): number =>
  rest.new + changed + lost + damaged;

/** Whether anything was ever recorded as printed. */
export const isPrinted = (counts: PaperCardsView["counts"]): boolean => counts.current + outdatedCount(counts) > 0;
