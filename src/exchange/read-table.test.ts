import { describe, expect, it } from "vitest";
import { type Delimiter, MAX_CELL, readTable, tableRows } from "./read-table.ts";

const texts = (text: string, delimiter: Delimiter = ",") =>
  readTable(text, delimiter).rows.map((row) => row.cells.map((cell) => cell.text));
const places = (text: string) => readTable(text, ",").problems.map(({ line, column }) => [line, column]);

describe("cells", () => {
  it("end at the delimiter and at the end of the line", () => {
    expect(texts("Vega,Lyra\nDeneb,Cygnus")).toEqual([
      ["Vega", "Lyra"],
      ["Deneb", "Cygnus"],
    ]);
    expect(texts("Vega\tLyra, the Lyre\n", "\t")).toEqual([["Vega", "Lyra, the Lyre"]]);
    expect(texts("Sirius;-1,46", ";")).toEqual([["Sirius", "-1,46"]]);
  });

  it("may be empty, the last one too", () => {
    expect(texts("Vega,,\n,\n")).toEqual([
      ["Vega", "", ""],
      ["", ""],
    ]);
    expect(texts('""\n')).toEqual([[""]]);
  });

  it("keep quote signs that stand inside a cell without quotes", () => {
    expect(texts('a 6" mirror,the "Plough"')).toEqual([['a 6" mirror', 'the "Plough"']]);
  });

  it("in quotes hold delimiters, line breaks of every kind and doubled quotes", () => {
    expect(texts('"Vega, ""Wega""\r\nor\rα\nLyrae",Lyra')).toEqual([['Vega, "Wega"\r\nor\rα\nLyrae', "Lyra"]]);
    expect(texts('"""Vega"""')).toEqual([['"Vega"']]);
  });

  it("may be followed by blanks after their closing quote", () => {
    expect(texts('"Vega" ,"Lyra"\t\n')).toEqual([["Vega", "Lyra"]]);
    expect(texts('"Vega"\t"Lyra"\n', "\t")).toEqual([["Vega", "Lyra"]]);
  });

  it("say on which line and in which column they start", () => {
    const { rows } = readTable('"Vega\r\nor\rWega",Lyra\n\r\nDeneb,"Cygnus"', ",");
    expect(rows.map((row) => [row.line, ...row.cells.map((cell) => `${cell.line}:${cell.column}`)])).toEqual([
      [1, "1:1", "3:7"],
      [5, "5:1", "5:7"],
    ]);
  });
});

describe("lines", () => {
  it("end with CRLF, LF or CR, also mixed", () => {
    expect(readTable("a\r\nb\nc\rd", ",").rows.map((row) => row.line)).toEqual([1, 2, 3, 4]);
  });

  it("that are empty are skipped and counted", () => {
    const { rows, problems } = readTable("\n\r\n\rVega,Lyra\n\n", ",");
    expect(rows.map((row) => row.line)).toEqual([4]);
    expect(problems).toEqual([]);
  });

  it("are none in an empty text", () => {
    expect(readTable("", ",")).toEqual({ rows: [], problems: [] });
  });
});

describe("a quote that is never closed", () => {
  it("costs its own line only, and is reported where it opened", () => {
    const { rows, problems } = readTable('Vega,Lyra\nDeneb,"Cygnus\nAltair,Aquila\nSpica,Virgo\n', ",");
    expect(rows.map((row) => row.cells[0]?.text)).toEqual(["Vega", "Altair", "Spica"]);
    expect(problems).toEqual([{ row: 2, line: 2, column: 7, cell: 1, reason: expect.stringMatching(/never closed/) }]);
  });

  it("does not swallow the quoted lines after it", () => {
    const text = '"Vega","Lyra"\n"Deneb","Cygnus\n"Altair","Aquila"\n"Spica","Virgo"\n';
    expect(texts(text)).toEqual([
      ["Vega", "Lyra"],
      ["Altair", "Aquila"],
      ["Spica", "Virgo"],
    ]);
    expect(places(text)).toEqual([[2, 9]]);
  });

  it("does not swallow lines up to a quoted cell far below", () => {
    const text = `Deneb,"Cygnus\n${"Altair,Aquila\n".repeat(50)}Spica,"Virgo, the Maiden"\n`;
    expect(texts(text)).toHaveLength(51);
    expect(places(text)).toEqual([[1, 7]]);
  });

  it("takes the lines of its record before it along", () => {
    const { rows, problems } = readTable('"Deneb\nin the Swan","Cygnus\nAltair,Aquila\n', ",");
    expect(rows.map((row) => row.line)).toEqual([3]);
    expect(problems).toMatchObject([{ row: 1, line: 2, column: 14, cell: 1 }]);
  });

  it("is found at the very end of the text", () => {
    expect(places('Vega,"')).toEqual([[1, 6]]);
    expect(places('"')).toEqual([[1, 1]]);
  });
});

describe("text after a closing quote", () => {
  it("is a problem of that row, reported where the text starts", () => {
    const { rows, problems } = readTable('"Vega" or Wega,Lyra\nDeneb,Cygnus\n', ",");
    expect(rows.map((row) => row.line)).toEqual([2]);
    expect(problems).toMatchObject([{ row: 1, line: 1, column: 8, cell: 0 }]);
    expect(problems[0]?.reason).toMatch(/after a closing quote/);
  });

  it("is reported once for a row, at its first place", () => {
    expect(places('"Vega"x,"Lyra"y\nDeneb,Cygnus')).toEqual([[1, 7]]);
  });
});

describe("a cell that is too long", () => {
  it("is a problem of its row, in quotes or not, and reading goes on", () => {
    const long = "a".repeat(MAX_CELL + 1);
    const { rows, problems } = readTable(`Vega,${long}\n"${long}",Lyra\n${"a".repeat(MAX_CELL)},ok\n`, ",");
    expect(rows.map((row) => row.line)).toEqual([3]);
    expect(problems).toMatchObject([
      { line: 1, column: 6 },
      { line: 2, column: 1 },
    ]);
    expect(problems[0]?.reason).toContain("20,001");
  });
});

it("rows come one at a time, so that reading can stop between them", () => {
  const events = tableRows('Vega,Lyra\nDeneb,"Cygnus\n', ",");
  expect(events.next().value).toMatchObject({ kind: "row", row: { line: 1 } });
  expect(events.next().value).toMatchObject({ kind: "problem", problem: { row: 2 } });
  expect(events.next().done).toBe(true);
});

// A reader that searched the rest of the text again after every quote would need minutes for each of these.
describe("time stays linear", () => {
  const LINES = 100_000;
  const SECONDS = 4;
  const hostile: readonly (readonly [string, string])[] = [
    ["nothing but quotes", '"'.repeat(1_000_001)],
    ["a quote opened in every line", 'Vega,"Lyra\n'.repeat(LINES)],
    ["one quote opened, then doubled quotes", `"Vega\n${'""Lyra\n'.repeat(LINES)}`],
    ["one record that spans everything and never ends", 'Vega","\n'.repeat(LINES)],
    ["quotes that close in the middle of the next line", '"\n" Vega\n'.repeat(LINES)],
    ["blanks without end after a closing quote", `"Vega"${" ".repeat(1_000_000)}x`],
  ];
  it.each(hostile)("for %s", (_, text) => {
    const start = performance.now();
    const { rows, problems } = readTable(text, ",");
    expect(performance.now() - start).toBeLessThan(SECONDS * 1000);
    expect(rows.length + problems.length).toBeGreaterThan(0);
  });
});
