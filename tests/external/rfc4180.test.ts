// Our reader and writer of tables against RFC 4180 (Y. Shafranovich, "Common Format and MIME Type for
// Comma-Separated Values (CSV) Files", October 2005), section 2, rule by rule with the RFC's own examples,
// and against csv-parse 7.0.3, an independent reader, on random tables.
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NO_EXTRAS } from "../../src/core/facts/fact.ts";
import { guessColumns } from "../../src/exchange/columns.ts";
import { disarmCell } from "../../src/exchange/formula-cells.ts";
import { type Delimiter, readTable } from "../../src/exchange/read-table.ts";
import { writeTable } from "../../src/exchange/write-table.ts";

const CRLF = "\r\n";

function cells(text: string, delimiter: Delimiter = ","): string[][] {
  const { rows, problems } = readTable(text, delimiter);
  expect(problems).toEqual([]);
  return rows.map((row) => row.cells.map((cell) => cell.text));
}

const TWO_RECORDS = [
  ["aaa", "bbb", "ccc"],
  ["zzz", "yyy", "xxx"],
];

describe("RFC 4180, section 2", () => {
  it("2.1: Each record is located on a separate line, delimited by a line break (CRLF).", () => {
    expect(cells(`aaa,bbb,ccc${CRLF}zzz,yyy,xxx${CRLF}`)).toEqual(TWO_RECORDS);
  });

  it("2.2: The last record in the file may or may not have an ending line break.", () => {
    expect(cells(`aaa,bbb,ccc${CRLF}zzz,yyy,xxx`)).toEqual(TWO_RECORDS);
  });

  it("2.3: There maybe an optional header line [...] with the same format as normal record lines.", () => {
    const header = ["field_name", "field_name", "field_name"];
    expect(cells(`field_name,field_name,field_name${CRLF}aaa,bbb,ccc${CRLF}zzz,yyy,xxx${CRLF}`)).toEqual([
      header,
      ...TWO_RECORDS,
    ]);
    // The RFC leaves it to the reader to know whether there is one; ours can be told.
    expect(guessColumns([header, ...TWO_RECORDS], true).header).toBe(true);
    expect(guessColumns([header, ...TWO_RECORDS], false).header).toBe(false);
  });

  it("2.4: [...] one or more fields, separated by commas. [...] Spaces are considered part of a field and should not be ignored. The last field in the record must not be followed by a comma.", () => {
    expect(cells("aaa,bbb,ccc")).toEqual([["aaa", "bbb", "ccc"]]);
    expect(cells(" aaa, bbb ,ccc ")).toEqual([[" aaa", " bbb ", "ccc "]]);
    // So a comma at the end of a line means one more field, which is empty.
    expect(cells("aaa,bbb,ccc,")).toEqual([["aaa", "bbb", "ccc", ""]]);
  });

  it("2.5: Each field may or may not be enclosed in double quotes [...]", () => {
    expect(cells(`"aaa","bbb","ccc"${CRLF}zzz,yyy,xxx`)).toEqual(TWO_RECORDS);
  });

  it("2.6: Fields containing line breaks (CRLF), double quotes, and commas should be enclosed in double-quotes.", () => {
    expect(cells(`"aaa","b${CRLF}bb","ccc"${CRLF}zzz,yyy,xxx`)).toEqual([
      ["aaa", `b${CRLF}bb`, "ccc"],
      ["zzz", "yyy", "xxx"],
    ]);
  });

  it("2.7: [...] a double-quote appearing inside a field must be escaped by preceding it with another double quote.", () => {
    expect(cells('"aaa","b""bb","ccc"')).toEqual([["aaa", 'b"bb', "ccc"]]);
  });
});

const cell = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 8 }),
  fc.string({ unit: fc.constantFrom('"', ",", ";", "\t", "\r", "\n", " ", "a", "ö"), maxLength: 8 }),
);
const table = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 6 })).chain(([width, height]) =>
  fc.array(fc.array(fc.tuple(cell, fc.boolean()), { minLength: width, maxLength: width }), {
    minLength: height,
    maxLength: height,
  }),
);
const delimiters = fc.constantFrom("," as const, "\t" as const, ";" as const);

/** A valid table: quotes where the RFC wants them (a line must not be empty either), and by chance elsewhere. */
function write(rows: readonly (readonly (readonly [string, boolean])[])[], delimiter: string, lineEnd: string): string {
  const line = (row: readonly (readonly [string, boolean])[]): string =>
    row
      .map(([text, quoted]) => {
        const mustQuote = /["\r\n]/.test(text) || text.includes(delimiter) || (row.length === 1 && text === "");
        return mustQuote || quoted ? `"${text.replaceAll('"', '""')}"` : text;
      })
      .join(delimiter);
  return rows.map((row) => line(row) + lineEnd).join("");
}

describe("csv-parse 7.0.3", () => {
  it("reads random valid tables as we do", () => {
    fc.assert(
      fc.property(table, delimiters, fc.constantFrom("\r\n", "\n", "\r"), (rows, delimiter, lineEnd) => {
        const text = write(rows, delimiter, lineEnd);
        const ours = cells(text, delimiter);
        expect(ours).toEqual(parse(text, { delimiter, record_delimiter: lineEnd }));
        expect(ours).toEqual(rows.map((row) => row.map(([value]) => value)));
      }),
      { numRuns: 500 },
    );
  });

  it("reads what we write", () => {
    const text = fc.string({
      unit: fc.constantFrom('"', ",", ";", "\t", "\n", " ", "=", "a", "ö"),
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text), { minLength: 1 }), delimiters, (pairs, delimiter) => {
        const facts = pairs.map(([prompt, answer]) => ({
          kind: "pair" as const,
          ...{ prompt, answer, ...NO_EXTRAS },
        }));
        const written = writeTable(facts, { delimiter, fileName: (hash) => hash });
        const read: string[][] = parse(written, { delimiter, record_delimiter: CRLF });
        const texts = pairs.map((pair) => pair.map(disarmCell));
        expect(read.slice(1)).toEqual(texts.map((pair) => [...pair, "", "", "", "", "", ""]));
      }),
    );
  });
});
