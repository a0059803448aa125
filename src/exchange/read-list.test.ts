import { describe, expect, it, vi } from "vitest";
import { findingPictures } from "../../tests/support/find-media.ts";
import type { ImportChoices } from "../app/views.ts";
import { createListReader, MAX_LIST_BYTES, MAX_LIST_ROWS, PREVIEW_LIMITS, previewList } from "./read-list.ts";

// Quick alone; room for a busy machine.
vi.setConfig({ testTimeout: 30_000 });

const HASH = "cd".repeat(32);
const file = (text: string): Uint8Array => Buffer.from(text, "utf8");
const findMedia = findingPictures((name: string) => (name === "moon.png" ? HASH : null));

function reader(text: string, choices: ImportChoices = {}) {
  const result = createListReader(file(text), choices, findMedia);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

function preview(text: string, choices: ImportChoices = {}, known: readonly string[] = []) {
  const result = previewList(file(text), choices, findMedia, (key) => known.includes(key));
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const STARS = "Prompt,Answer,Tags\nVega,Lyra,summer\nDeneb,Cygnus,summer\n";

describe("how a list is written", () => {
  it("is worked out from the list", () => {
    const list = reader(STARS);
    expect(list).toMatchObject({ encoding: "utf-8", delimiter: ",", header: true, replaced: 0 });
    expect(list.columns).toEqual(["prompt", "answer", "tags"]);
    expect(list.sample).toEqual([
      ["Prompt", "Answer", "Tags"],
      ["Vega", "Lyra", "summer"],
      ["Deneb", "Cygnus", "summer"],
    ]);
  });

  it("can be chosen", () => {
    const list = preview("Vega;Lyra\nDeneb;Cygnus", {
      delimiter: ";",
      header: true,
      columns: ["answer", "prompt"],
      encoding: "windows-1252",
    });
    expect(list).toMatchObject({ encoding: "windows-1252", header: true, rows: 1, good: 1 });
    expect([...reader("Vega;Lyra", { columns: ["answer", "prompt"] }).drafts()]).toMatchObject([
      { content: { prompt: "Lyra" } },
    ]);
  });

  it("is read in other encodings", () => {
    const wide = Buffer.from("\ufeffBärenhüter\tBoötes\r\n", "utf16le");
    const result = previewList(wide, {}, findMedia, () => false);
    expect(result).toMatchObject({ ok: true, value: { encoding: "utf-16le", delimiter: "\t", good: 1 } });
  });
});

describe("rows", () => {
  it("come in order as facts, duplicates and problems, with their lines", () => {
    const items = [...reader("Vega,Lyra\nDeneb\n\n Vega ,  Lyra\n,,\nSpica,Virgo\n").drafts()];
    expect(items.map(({ kind, line }) => [kind, line])).toEqual([
      ["fact", 1],
      ["problems", 2],
      ["duplicate", 4],
      ["fact", 6],
    ]);
    expect(items[2]).toMatchObject({ firstLine: 1 });
  });

  it("are read only as far as they are asked for, and from the top again", () => {
    const asked: string[] = [];
    const result = createListReader(
      file("a,b,x.png\nc,d,y.png\n"),
      { columns: ["prompt", "answer", "picture"] },
      findingPictures((name) => {
        asked.push(name);
        return HASH;
      }),
    );
    if (!result.ok) throw new Error(result.error.message);
    result.value.drafts().next();
    expect(asked).toEqual(["x.png"]);
    expect([...result.value.drafts()]).toHaveLength(2);
  });

  it("are never more than estimated", () => {
    const text = `${STARS}"a\nb",c\n"unclosed,d\n\n\ne,f`;
    const list = reader(text);
    const rows = [...list.drafts()].length;
    expect(rows).toBe(5);
    expect(list.estimatedRows).toBeGreaterThanOrEqual(rows);
  });

  it("after a header whose line is damaged are all read", () => {
    const list = preview('Prompt,"Answer\nVega,Lyra\nDeneb,Cygnus\n', { header: false });
    expect(list).toMatchObject({ rows: 3, good: 2, problemCount: 1 });
  });
});

describe("a preview", () => {
  it("counts every row once: good, duplicate, or with problems", () => {
    const list = preview("Vega,Lyra\nVega,Lyra\nDeneb,Cygnus\nSpica\n", {}, ["pair\u001fDeneb\u001fCygnus"]);
    expect(list).toMatchObject({ rows: 4, good: 1, duplicates: 2, problemCount: 1, cardCount: 2 });
  });

  it("shows the cards of the first good rows as they will look", () => {
    const list = preview("prompt,answer,statement,picture\n,,[Vega] is in [Lyra],\n,Moon,,moon.png\n");
    expect(list.cards.map((card) => card.angle)).toEqual(["gap-1", "gap-2", "picture-to-name", "name-to-picture"]);
    expect(list.cards[2]?.prompt.picture).toBe(HASH);
    expect(new Set(list.cards.map((card) => card.id)).size).toBe(4);
  });

  it("shows the first problems and counts them all", () => {
    const list = preview(`prompt,answer\n${"Vega\n".repeat(300)}Deneb,"Cygnus\n`);
    expect(list.problems).toHaveLength(PREVIEW_LIMITS.problems);
    expect(list.problemCount).toBe(301);
    expect(list.problems[0]).toMatchObject({ line: 2, column: 1, field: "answer" });
  });

  it("names the column of a problem with quotes", () => {
    expect(preview('prompt,answer\nDeneb,"Cygnus\n').problems).toMatchObject([{ line: 2, column: 7, field: "answer" }]);
  });

  it("of an empty list is empty", () => {
    expect(preview("")).toMatchObject({ rows: 0, good: 0, problems: [], cards: [], columns: [] });
  });

  it("of a hundred thousand rows is ready in a few seconds", () => {
    const lines = Array.from(
      { length: 100_000 },
      (_, i) => `"Which number has star ${i}, in our list?",Stern Nr. ${i} – α,"seen ""low""",sky; list`,
    );
    const bytes = file(`prompt,answer,note,tags\r\n${lines.join("\r\n")}\r\n`);
    const start = performance.now();
    const list = previewList(bytes, {}, findMedia, () => false);
    const ROOM_FOR_A_BUSY_MACHINE = 5_000;
    expect(performance.now() - start).toBeLessThan(ROOM_FOR_A_BUSY_MACHINE);
    expect(list).toMatchObject({ ok: true, value: { rows: 100_000, good: 100_000, cardCount: 200_000 } });
  });
});

describe("a list is refused", () => {
  const refusal = (bytes: Uint8Array, choices: ImportChoices = {}) => {
    const result = previewList(bytes, choices, findMedia, () => false);
    return result.ok ? null : result.error;
  };

  it("with too many bytes or too many rows", () => {
    expect(refusal(new Uint8Array(MAX_LIST_BYTES + 1))?.kind).toBe("too-many-bytes");
    expect(refusal(file("a,b\n".repeat(MAX_LIST_ROWS + 1)))).toMatchObject({
      kind: "too-many-rows",
      message: /500,000 rows/,
    });
  });

  it("but not for exactly as many as are read, under a header", () => {
    expect(refusal(file(`prompt,answer\n${"a,b\n".repeat(MAX_LIST_ROWS)}`))).toBeNull();
  });

  it("but not for many lines inside few rows", () => {
    expect(refusal(file(`"${"a\n".repeat(MAX_LIST_ROWS + 1)}",b\nVega,Lyra\n`))).toBeNull();
  });

  it("that is no text, saying what it is", () => {
    expect(refusal(Buffer.from("PK\u0003\u0004rest", "latin1"))).toMatchObject({
      kind: "not-text",
      message: /spreadsheet/,
    });
    expect(refusal(Buffer.from("%PDF-1.7", "latin1"))).toMatchObject({ kind: "not-text" });
  });

  it("if a column is chosen twice", () => {
    expect(refusal(file("a,b"), { columns: ["note", "note"] })).toMatchObject({
      kind: "column-twice",
      message: /“note”/,
    });
    expect(refusal(file("a,b"), { columns: [null, null] })).toBeNull();
  });
});
