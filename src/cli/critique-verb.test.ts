import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { withFolder } from "../../tests/support/program.ts";
import { printedBy } from "../../tests/support/verb-output.ts";
import { critiqueVerb } from "./critique-verb.ts";

const LIST = [
  "prompt,answer,statement,story",
  "Brightest star of Lyra,Vega,,",
  "Is Vega in Lyra?,Yes,,",
  '"Summer\nTriangle","Vega, Deneb, Altair",,',
  ",,Vega [is] the brightest star of [Lyra].,",
  "Boo\u0308tes,Herdsman,,",
  "Uranus found in,1781,,",
].join("\r\n");

const critique = (json: boolean, text = LIST) =>
  withFolder(async (folder) => {
    const file = join(folder, "list.csv");
    writeFileSync(file, text);
    return printedBy(critiqueVerb, { json }, [file]);
  });

it("names rows by the line on which they begin, and gives for each note what can be done", async () => {
  const notes = JSON.parse(await critique(true)) as Record<string, unknown>[];
  expect(notes.map(({ row, rule }) => [row, rule])).toEqual([
    [3, "yes-no"],
    [4, "whole-list"],
    [6, "blank-size"],
    [7, "damaged-text"],
    [8, "bare-number"],
  ]);
  expect(notes[0]).toMatchObject({ severity: "warning", fix: "Ask for the thing itself" });
  expect(notes[1]).toMatchObject({ fix: "Make it a list in order" });
  for (const note of notes)
    expect([note.message, note.fix, note.reason].every((text) => typeof text === "string" && text !== "")).toBe(true);
});

it("says the same in words, and so where there is nothing to say", async () => {
  expect(await critique(false)).toContain("row 3, yes-no: The answer is “Yes”.");
  expect(await critique(false, "prompt,answer\nBrightest star of Lyra,Vega\n")).toMatch(/^Nothing to say/u);
});
