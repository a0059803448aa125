import { describe, expect, it } from "vitest";
import { readPaperDays } from "./read-paper-days.ts";

const rowsOf = (text: string) => {
  const read = readPaperDays(text);
  return read.ok ? read.value : read.error;
};

describe("a table of days on paper", () => {
  it.each([
    ["commas", 'date,missed,piles\n2026-03-14,"1042-9, 572-4",3 1\n2026-03-15\n'],
    ["semicolons", "Date;Missed;Piles\r\n2026-03-14;1042-9, 572-4;3 1\r\n2026-03-15;;"],
    ["tabs", "date\tmissed\tpiles\n2026-03-14\t1042-9, 572-4\t3 1\n2026-03-15\t\t\n"],
  ])("is read with %s between its cells, and what is left out is empty", (_name, text) => {
    expect(rowsOf(text)).toEqual([
      { line: 2, date: "2026-03-14", missed: "1042-9, 572-4", introduced: "", piles: "3 1" },
      { line: 3, date: "2026-03-15", missed: "", introduced: "", piles: "" },
    ]);
  });

  it("may have its columns in any order, or dates alone", () => {
    expect(rowsOf("introduced,date\n17-4,2026-03-14")).toMatchObject([{ date: "2026-03-14", introduced: "17-4" }]);
    expect(rowsOf("date\n2026-03-14")).toMatchObject([{ date: "2026-03-14", missed: "" }]);
    expect(rowsOf("date,missed\n")).toEqual([]);
    expect(rowsOf("date,missed\n,\n2026-03-14,\n ,\n")).toMatchObject([{ line: 3, date: "2026-03-14" }]);
  });

  it.each([
    ["2026-03-14,1042-9", "the first line names the columns"],
    ["missed\n1042-9", "the first line names the columns"],
    ["date,missed,missed\n2026-03-14,,1042-9", "two columns are named missed"],
    ["", "the first line names the columns"],
    ["date,missed\n14.03.2026,1042-9", "line 2: “14.03.2026” is no day such as 2026-03-14"],
    ["date,missed\n2026-03-14,1042-9,572-4", "line 2: more cells than columns"],
    ["date\n2026-03-14\n2026-03-14", "line 3: 2026-03-14 is there twice"],
    ['date,missed\n2026-03-14,"1042-9', "line 2, column 12"],
  ])("that cannot be right is refused with the place: %j", (text, said) => {
    expect(rowsOf(text)).toContain(said);
  });
});
