import { describe, expect, it } from "vitest";
import { COLUMNS } from "../app/views.ts";
import { columnNamed, guessColumns } from "./columns.ts";

const guess = (list: string, header?: boolean) =>
  guessColumns(
    list.split("\n").map((line) => line.split("|")),
    header,
  );

describe("a header", () => {
  it("names columns as we do, in any case and order", () => {
    expect(guess("TAGS|Answer|prompt\nsummer|Lyra|Vega")).toEqual({
      header: true,
      columns: ["tags", "answer", "prompt"],
    });
    expect(guess(`${COLUMNS.join("|")}\nVega|Lyra`)).toEqual({ header: true, columns: [...COLUMNS] });
  });

  it("may use plain words for them", () => {
    expect(guess("Term|Meaning|Remark|Photo\nVega|Lyra||").columns).toEqual(["prompt", "answer", "note", "picture"]);
    expect(guess("Sentence|Reference|Topic|Label\n[Vega]|p. 3|a|b").columns).toEqual([
      "statement",
      "source",
      "tags",
      null,
    ]);
  });

  it("may be German, French or Spanish, with or without accents", () => {
    expect(guess("Frage|Antwort|Quelle\nWega|Leier|").columns).toEqual(["prompt", "answer", "source"]);
    expect(guess("Mot|Définition|Thème\nVéga|Lyre|").columns).toEqual(["prompt", "answer", "tags"]);
    expect(guess("termino|Traducción|Imagen\nVega|Lira|").columns).toEqual(["prompt", "answer", "picture"]);
    expect(columnNamed(" ÜBERSETZUNG: ")).toBe("answer");
  });

  it("takes a name for the answer, or for the prompt beside a meaning", () => {
    expect(guess("picture|name\nvega.jpg|Vega").columns).toEqual(["picture", "answer"]);
    expect(guess("name|meaning\nVega|the falling one").columns).toEqual(["prompt", "answer"]);
  });

  it("that names only one side leaves the other to the cells", () => {
    expect(guess("star|meaning\nVega|Lyra").columns).toEqual(["prompt", "answer"]);
  });

  it("is none if it names one column twice: a vocabulary may begin like that", () => {
    expect(guess("question|Frage\nstar|Stern")).toEqual({ header: false, columns: ["prompt", "answer"] });
  });

  it("is none without a name that we know, or with a gap", () => {
    expect(guess("Vega|Lyra\nDeneb|Cygnus").header).toBe(false);
    expect(guess("The [statement]\nThe [moon]").header).toBe(false);
    expect(guess("tags|Lyra\nstar|Cygnus").header).toBe(false);
  });

  it("can be ordered or forbidden", () => {
    expect(guess("star|group\nVega|Lyra", true)).toEqual({ header: true, columns: ["prompt", "answer"] });
    expect(guess("prompt|answer\nVega|Lyra", false)).toEqual({ header: false, columns: ["prompt", "answer"] });
  });
});

describe("without a header", () => {
  it("two columns are prompt and answer, a third is a note", () => {
    expect(guess("Vega|Lyra").columns).toEqual(["prompt", "answer"]);
    expect(guess("Vega|Lyra|white\nDeneb|Cygnus|").columns).toEqual(["prompt", "answer", "note"]);
  });

  it("a column where most cells have gaps is the statement, wherever it stands", () => {
    expect(guess("The star [Vega] is in Lyra\nA line without\nThe star [Deneb] is in Cygnus").columns).toEqual([
      "statement",
    ]);
    expect(guess("p. 3|[Vega] is white\np. 4|[Antares] is red").columns).toEqual(["note", "statement"]);
  });

  it("one column is the statement even before it has gaps", () => {
    expect(guess("Vega is in Lyra\nDeneb is in Cygnus").columns).toEqual(["statement"]);
  });

  it("file names of pictures are the picture, wherever they stand", () => {
    expect(guess("vega.JPG|Vega\nmoon.png|the Moon").columns).toEqual(["picture", "answer"]);
    expect(guess("Vega|Lyra|vega.webp\nDeneb|Cygnus|").columns).toEqual(["prompt", "answer", "picture"]);
  });

  it("an empty column and further columns are left out", () => {
    expect(guess("Vega||Lyra|white|25|x\nDeneb||Cygnus|blue|2600|y").columns).toEqual([
      "prompt",
      null,
      "answer",
      "note",
      null,
      null,
    ]);
  });

  it("an empty list has no columns", () => {
    expect(guessColumns([])).toEqual({ header: false, columns: [] });
  });
});
