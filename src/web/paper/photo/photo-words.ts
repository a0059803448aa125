// What went wrong with a photo, and what to do about it.
import type { PhotoTrouble } from "../../../core/paper/photo/read-page.ts";
import type { WrongSheet } from "../../../core/paper/photo/sheet-draft.ts";
import { counted, longDate } from "../../words.ts";

/** Anything for which a photo is not taken. */
export type Refusal = PhotoTrouble | WrongSheet | { readonly kind: "no-picture" } | { readonly kind: "broken" };

/** One or two sentences: what it is, and what to do. */
export function refusalWords(refusal: Refusal): string {
  switch (refusal.kind) {
    case "no-picture":
      return "This file is not a picture that the browser can open. Choose a photo as a JPEG or PNG.";
    case "no-sheet":
      return "No sitting sheet can be seen in this photo. Photograph the page with its four corner codes, in focus.";
    case "newer-sheet":
      return "This sheet was printed by a newer Longhold. Type the numbers of the missed cards instead.";
    case "several-pages":
      return "More than one page can be seen in this photo. Photograph one page at a time.";
    case "few-codes":
      return `Only ${counted(refusal.found, "corner code", "corner codes")} of four can be read. Have the whole page in the photo, in focus and in even light.`;
    case "damaged":
      return "The corner codes of this page do not agree with one another. Type the numbers of the missed cards instead.";
    case "too-small":
      return "The page is too small in this photo. Go closer, or use the full size of the photo.";
    case "cut-off":
      return "Some boxes are outside this photo. Have the whole page in it.";
    case "bent":
      return "The page is bent in this photo. Lay it flat and photograph it again.";
    case "blurred":
      return "This photo is too blurred to see the boxes. Hold the telephone still and photograph the page again.";
    case "grainy":
      return "This photo is too grainy to tell faint marks from nothing. Photograph the page again in more light.";
    case "other-box":
      return "This sheet belongs to another box. Open that box to enter it.";
    case "other-day":
      return `This is the sheet of ${longDate(refusal.date)}, and you are entering ${longDate(refusal.wanted)}. Choose the other day, or photograph the right sheet.`;
    case "other-sheet":
      return `This page is of another printing of the day's sheet. Photograph page ${refusal.page} of the sheet whose other pages were read.`;
    case "broken":
      return "The photo could not be read: there may be too little memory. Close other pages and try again.";
  }
}
