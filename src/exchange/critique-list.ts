// The critique of a list before it becomes facts, row by row.
import { FailureError } from "../app/failure.ts";
import type { RowProblem } from "../app/views.ts";
import { critiqueFacts } from "../core/critique/critique-facts.ts";
import { type Note, toNote } from "../core/critique/note.ts";
import type { Fact } from "../core/facts/fact.ts";
import { hash32 } from "../core/random.ts";
import { decodeText } from "./decode-text.ts";
import { asFact, createListReader } from "./read-list.ts";
import { tableRows } from "./read-table.ts";

/** A note about the row that begins on this line; the header is row 1. */
export interface RowNote {
  readonly row: number;
  readonly note: Note;
}

/** What the rules say of a list, in the order of its rows, and what keeps other rows from being read. */
export function critiqueList(bytes: Uint8Array): {
  readonly notes: readonly RowNote[];
  readonly problems: readonly RowProblem[];
} {
  // Whether a named picture or sound is there does not matter here.
  const standIn = (name: string): string => hash32("file", name).toString(16).padStart(64, "0");
  const reader = createListReader(bytes, {}, { picture: standIn, sound: standIn });
  if (!reader.ok) throw new FailureError("invalid-input", reader.error.message);
  const facts: Fact[] = [];
  const problems: RowProblem[] = [];
  for (const item of reader.value.drafts()) {
    if (item.kind === "problems") problems.push(...item.problems);
    if (item.kind === "fact") facts.push({ ...asFact(item), id: `${item.line}` });
  }
  const notes = critiqueFacts(facts).map((note) => ({ row: Number(note.fact), note }));
  const told = new Set(notes.filter(({ note }) => note.rule === "damaged-text").map(({ row }) => row));
  const tidied = [...tidiedRows(bytes, reader.value.delimiter)].filter(({ row }) => !told.has(row));
  return { notes: [...notes, ...tidied].sort((a, b) => a.row - b.row), problems };
}

/** Rows whose cells hold what reading them mends by itself. */
function* tidiedRows(bytes: Uint8Array, delimiter: Parameters<typeof tableRows>[1]): Generator<RowNote> {
  for (const event of tableRows(decodeText(bytes).text, delimiter)) {
    if (event.kind !== "row") continue;
    const damaged = event.row.cells
      .map(({ text }) => text)
      .filter((text) => text !== text.normalize("NFC") || text !== text.trim());
    if (damaged.length === 0) continue;
    const row = event.row.line;
    const message =
      "The text is damaged: blanks stand at its ends, or letters and their accents are not joined (NFC). Reading the list mends it.";
    yield {
      row,
      note: toNote(`${row}`, { rule: "damaged-text", angle: null, message, about: damaged.join("\n"), fix: null }),
    };
  }
}
