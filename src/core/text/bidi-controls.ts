// Invisible characters that set the direction of writing (Unicode Standard Annex 9). Kept in order, so that no text
// can turn round what stands beside it, and none reads other than it is written.

const OVERRIDES = "\u202d\u202e";
const EMBEDDINGS = "\u202a\u202b";
const ISOLATES = "\u2066\u2067\u2068";
const POP = "\u202c";
const POP_ISOLATE = "\u2069";
const ANY = /[\u202a-\u202e\u2066-\u2069]/;

/**
 * The text without overrides, which show letters in an order that is not theirs; embeddings and isolates that are left
 * open are closed at the end of their line, what closes nothing is left out. Settling it again changes nothing.
 */
export const settleBidi = (text: string): string =>
  ANY.test(text) ? text.split("\n").map(settleLine).join("\n") : text;

type Opened = "embedding" | "isolate" | "override";

function settleLine(line: string): string {
  const open: Opened[] = [];
  let settled = "";
  for (const c of line) {
    if (OVERRIDES.includes(c)) open.push("override");
    else if (c === POP) {
      if (open.at(-1) === "isolate" || open.length === 0) continue;
      if (open.pop() === "embedding") settled += c;
    } else if (c === POP_ISOLATE) {
      if (!open.includes("isolate")) continue;
      // What was opened inside an isolate ends with it.
      while (open.pop() !== "isolate");
      settled += c;
    } else {
      if (EMBEDDINGS.includes(c)) open.push("embedding");
      if (ISOLATES.includes(c)) open.push("isolate");
      settled += c;
    }
  }
  const closing: Readonly<Record<Opened, string>> = { embedding: POP, isolate: POP_ISOLATE, override: "" };
  return (
    settled +
    open
      .reverse()
      .map((one) => closing[one])
      .join("")
  );
}
