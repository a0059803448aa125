import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readPdf } from "../../tests/support/pdf-tools.ts";
import { printedBy } from "../../tests/support/verb-output.ts";
import { demoVerb } from "./demo-verb.ts";
import { kitVerb } from "./kit-verb.ts";
import { todayVerb } from "./today-verb.ts";
import type { Call } from "./verb.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "longhold-kit-verb-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Prints a kit and gives the text of its pages, empty ones left out, and what the verb said as JSON. */
async function kitOf(values: Call["values"]) {
  const out = join(folder, "kit.pdf");
  const said = JSON.parse(await printedBy(kitVerb, { out, json: true, ...values }));
  const pdf = readPdf(readFileSync(out));
  try {
    return { said, pages: pdf.pages.map((page) => page.trim()).filter((page) => page !== "") };
  } finally {
    pdf.close();
  }
}

describe("longhold kit --file", () => {
  const list = () => {
    const file = join(folder, "stars.csv");
    writeFileSync(
      file,
      "prompt,answer,statement\nBrightest star of Lyra,Vega,\n,,The axis of [Uranus] lies in its orbit.\n",
    );
    return file;
  };

  it("prints the cards of a list, numbered from 1, without a data folder", async () => {
    const { said, pages } = await kitOf({ file: list(), parts: "cards" });
    expect(said).toEqual({ pages: 2, cards: 3, notices: [] });
    // Check digits by the table of Damm: 1 → 3, 2 → 1, 3 → 7, worked by hand.
    expect(pages[0]).toMatch(/Brightest star of Lyra\nstars\n1-3\nVega\nstars\n2-1\nThe axis of _____ lies/);
    expect(pages[1]).toContain("The axis of Uranus lies");
  });

  it("prints the calendar from a date with rest days, and a blank sheet", async () => {
    const { pages } = await kitOf({
      file: list(),
      parts: "calendar,sheet",
      start: "2026-11-30",
      rest: "sun",
      days: "8",
    });
    // 30 November 2026 is a Monday; the sixth of December rests. Day 1 of the plain chart visits 2 and 1.
    expect(pages[0]).toMatch(/30 Nov\n1\n2, 1\n[\s\S]*6 Dec\nrest\n7 Dec\n7\n2, 1/);
    expect(pages[1]).toContain("Sitting of ____________, chart day ______");
  });

  it.each([
    [{ card: "a9" }],
    [{ paper: "a5" }],
    [{ turn: "over" }],
    [{ parts: "cards,poster" }],
    [{ shift: "1" }],
    [{ shift: "99,0" }],
    [{ bleed: "0.5" }],
    [{ bleed: "-2" }],
    [{ bleed: "6" }],
    [{ mark: "barcode" }],
    [{ language: "english" }],
    [{ subject: "x" }],
    [{ data: "x" }],
  ])("refuses %j as bad usage", async (values: Call["values"]) => {
    await expect(printedBy(kitVerb, { file: list(), out: join(folder, "no.pdf"), ...values })).rejects.toThrow();
  });

  it("says what is missing of a list that is not there", async () => {
    await expect(printedBy(kitVerb, { file: join(folder, "none.csv"), out: join(folder, "no.pdf") })).rejects.toThrow(
      "cannot be read",
    );
  });
});

describe("longhold kit of the box", () => {
  it("prints today's sheet with as many cards as are due, and the stored numbers", async () => {
    const data = join(folder, "demo");
    const demo = JSON.parse(await printedBy(demoVerb, { data, json: true }));
    const today = JSON.parse(await printedBy(todayVerb, { data, json: true }));
    const { said, pages } = await kitOf({ data, parts: "sheet,cards" });
    expect(said.cards).toBe(demo.cards);
    const sheet = pages.filter((page) => page.startsWith("Sitting of")).join("\n");
    const fronts = new Set(
      pages
        .filter((page) => !page.startsWith("Sitting of"))
        .join("\n")
        .match(/^\d+-\d$/gm),
    );
    const listed = sheet.match(/\b\d+-\d\b/g) ?? [];
    expect(listed).toHaveLength(today.due + today.newCards);
    for (const number of listed) expect(fronts).toContain(number);
  });
});
