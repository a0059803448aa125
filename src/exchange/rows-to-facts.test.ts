import { describe, expect, it } from "vitest";
import { findingPictures } from "../../tests/support/find-media.ts";
import type { Column } from "../app/views.ts";
import { NO_EXTRAS } from "../core/facts/fact.ts";
import type { FindMedia } from "./list-media.ts";
import { readTable } from "./read-table.ts";
import { isBlankRow, ROW_LIMITS, rowToFact } from "./rows-to-facts.ts";

const HASH = "ab".repeat(32);
const SOUND = "cd".repeat(32);
const media: FindMedia = {
  picture: (name) => (name === "vega.jpg" ? HASH : null),
  sound: (name) => (name === "vega.mp3" ? SOUND : null),
};
const rowOf = (line: string) => readTable(line, "|" as ",").rows[0] ?? { line: 1, cells: [] };

/** The fact of one line, its cells divided by bars. */
function read(columns: readonly (Column | null)[], line: string) {
  const result = rowToFact(rowOf(line), columns, media);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value.content;
}

function problems(columns: readonly (Column | null)[], line: string) {
  const result = rowToFact(rowOf(line), columns, media);
  if (result.ok) throw new Error("no problem was found");
  return result.error;
}

const NOTHING = NO_EXTRAS;

describe("a row becomes", () => {
  it("a pair from prompt and answer, in any order of columns", () => {
    expect(read(["answer", "prompt"], "Lyra|Vega")).toEqual({
      kind: "pair",
      prompt: "Vega",
      answer: "Lyra",
      ...NOTHING,
    });
  });

  it("a statement with its gaps numbered", () => {
    expect(read(["statement"], "[Vega] is in [Lyra]")).toEqual({
      kind: "statement",
      statement: "[Vega] is in [Lyra]",
      gaps: [1, 2],
      ...NOTHING,
    });
  });

  it("a picture fact from a picture and one of prompt and answer", () => {
    const expected = { kind: "picture", name: "Vega", ...NOTHING, picture: HASH };
    expect(read(["picture", "answer"], "vega.jpg|Vega")).toEqual(expected);
    expect(read(["picture", "prompt", "answer"], "vega.jpg|Vega|")).toEqual(expected);
  });

  it("a pair or a statement with the picture as illustration", () => {
    expect(read(["prompt", "answer", "picture"], "Vega|Lyra|vega.jpg")).toMatchObject({ kind: "pair", picture: HASH });
    expect(read(["statement", "picture"], "[Vega]|vega.jpg")).toMatchObject({ kind: "statement", picture: HASH });
  });

  it("a fact with note, source, story and tags", () => {
    const columns = ["prompt", "answer", "note", "source", "story", "tags"] as const;
    expect(read(columns, "Vega|Lyra|white|own eyes|a lyre of ice|star; summer,,star ,two  words")).toMatchObject({
      note: "white",
      source: "own eyes",
      story: "a lyre of ice",
      tags: ["star", "summer", "two words"],
    });
  });

  it("a fact with tidy text, and markup kept as text", () => {
    expect(read(["prompt", "answer"], " <i>Boo\u0308tes</i>\u0000 |\u200bx")).toMatchObject({
      prompt: "<i>Boötes</i>",
    });
  });

  it("a fact without the columns that are left out", () => {
    expect(read(["prompt", null, "answer"], "Vega|25 light-years|Lyra")).toMatchObject({ answer: "Lyra", note: "" });
  });
});

describe("a row is refused", () => {
  it("that is a statement and something else", () => {
    expect(problems(["statement", "prompt"], "[Vega]|Deneb")).toEqual([
      {
        line: 1,
        column: 8,
        field: "prompt",
        reason: expect.stringMatching(/either a statement or a prompt with an answer/),
      },
    ]);
  });

  it("that lacks one half", () => {
    expect(problems(["prompt", "answer"], "Vega|")).toMatchObject([{ field: "answer", line: 1, column: 6 }]);
    expect(problems(["prompt", "answer"], "|Lyra")).toMatchObject([{ field: "prompt", column: 1 }]);
    expect(problems(["prompt", "answer"], "Vega")).toMatchObject([{ field: "answer", line: 1, column: 1 }]);
    expect(problems(["picture", "answer"], "vega.jpg|")).toMatchObject([{ field: "answer" }]);
    expect(problems(["note"], "white")).toMatchObject([
      { field: null, reason: expect.stringMatching(/nothing to learn/) },
    ]);
  });

  it("that has more cells than there are columns", () => {
    expect(problems(["prompt", "answer"], "Vega|Lyra|the Lyre")).toMatchObject([{ field: null, column: 11 }]);
    expect(read(["prompt", "answer"], "Vega|Lyra||")).toMatchObject({ kind: "pair" });
  });

  it("whose text or tags are too long", () => {
    const long = "a".repeat(ROW_LIMITS.text + 1);
    expect(problems(["prompt", "answer", "note"], `${long}|Lyra|${long}`).map((problem) => problem.field)).toEqual([
      "prompt",
      "note",
    ]);
    expect(read(["prompt", "answer"], `${"a".repeat(ROW_LIMITS.text)}|Lyra`).kind).toBe("pair");
    const many = Array.from({ length: 21 }, (_, i) => `tag ${i}`).join(",");
    expect(problems(["prompt", "answer", "tags"], `Vega|Lyra|${many}`)).toMatchObject([{ field: "tags" }]);
    expect(problems(["prompt", "answer", "tags"], `Vega|Lyra|${"a".repeat(61)}`)).toMatchObject([{ field: "tags" }]);
  });

  it("with everything that is wrong with it at once", () => {
    const found = problems(["prompt", "answer", "picture"], `Vega||moon.png`);
    expect(found.map((problem) => problem.field)).toEqual(["picture"]);
    expect(problems(["statement", "picture"], "[Vega|moon.png").map((problem) => problem.field)).toEqual([
      "picture",
      "statement",
    ]);
  });
});

describe("trouble with a gap is shown where it is in the file", () => {
  it("in a plain cell", () => {
    expect(problems(["note", "statement"], "white|The [Vega] and [Deneb")).toMatchObject([
      { line: 1, column: 22, field: "statement", reason: expect.stringMatching(/never closed: write/) },
    ]);
  });

  it("in a quoted cell with doubled quotes and line breaks", () => {
    expect(problems(["statement"], '"a ""b"" ]"')).toMatchObject([{ line: 1, column: 10 }]);
    expect(problems(["statement"], '"a\r\n ""b"" ]"')).toMatchObject([{ line: 2, column: 8 }]);
  });

  it("or at the cell, if there is no gap at all", () => {
    expect(problems(["note", "statement"], "white|Vega")).toMatchObject([
      { column: 7, reason: expect.stringMatching(/^there is no gap: put \[square brackets\]/) },
    ]);
  });
});

describe("a picture's name", () => {
  const refused: readonly (readonly [string, RegExp])[] = [
    ["/pictures/vega.jpg", /folder/],
    ["pictures/vega.jpg", /folder/],
    ["..\\vega.jpg", /folder/],
    ["C:vega.jpg", /disk/],
    ["..", /not the name/],
    ["https://hilltop.example/vega.jpg", /address/],
    ["data:image/png;base64,AAAA", /address/],
    ["file:vega.jpg", /address/],
    [`${"a".repeat(300)}.jpg`, /longer than 255/],
  ];
  it.each(refused)("is refused if it is %s", (name, reason) => {
    expect(problems(["prompt", "answer", "picture"], `Vega|Lyra|${name}`)).toMatchObject([
      { field: "picture", line: 1, column: 11, reason: expect.stringMatching(reason) },
    ]);
  });

  it("that did not come with the list is named", () => {
    const [problem] = problems(["prompt", "answer", "picture"], "Moon|a satellite|moon.png");
    expect(problem?.reason).toContain("“moon.png”");
  });

  it("may be a sound, found by its name too", () => {
    expect(read(["answer", "sound"], "Vega|vega.mp3")).toMatchObject({ kind: "sound", name: "Vega", sound: SOUND });
    expect(read(["prompt", "answer", "sound"], "Vega|Lyra|vega.mp3")).toMatchObject({ kind: "pair", sound: SOUND });
    const [missing, folder] = ["deneb.mp3", "../vega.mp3"].map((name) => problems(["answer", "sound"], `Vega|${name}`));
    expect(missing).toMatchObject([{ field: "sound", column: 6 }]);
    expect(missing?.[0]?.reason).toBe(
      "the sound “deneb.mp3” did not come with the list: add that file, or clear the cell",
    );
    expect(folder?.[0]?.reason).toContain("holds a folder or a disk");
  });

  it("is never looked for if it was refused", () => {
    const asked: string[] = [];
    rowToFact(
      rowOf("a|b|../x.png"),
      ["prompt", "answer", "picture"],
      findingPictures((name) => {
        asked.push(name);
        return HASH;
      }),
    );
    expect(asked).toEqual([]);
  });
});

it("a row of blanks is blank", () => {
  expect(isBlankRow(rowOf(" | |\t"))).toBe(true);
  expect(isBlankRow(rowOf(" |0"))).toBe(false);
});
