// Spreadsheets written by another program: openpyxl 3.0.9, a library for Office Open XML of its own (Debian's
// python3-openpyxl), from the rows that stand below.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { openParcel } from "../../src/exchange/import-list.ts";
import { createListReader } from "../../src/exchange/read-list.ts";
import { SPREADSHEET_LIMIT } from "../../src/exchange/read-spreadsheet.ts";

import { FIND_NOTHING } from "../support/find-media.ts";

const FILE = new Uint8Array(readFileSync(fileURLToPath(new URL("fixtures/summer-sky.xlsx", import.meta.url))));

const facts = async (bytes: Uint8Array<ArrayBuffer>) => {
  const { list } = await openParcel(bytes);
  const reader = createListReader(list, {}, FIND_NOTHING);
  if (!reader.ok) throw new Error(reader.error.message);
  return [...reader.value.drafts()];
};

describe("a spreadsheet", () => {
  it("is read as the list in its first sheet, line for row", async () => {
    const rows = (await facts(FILE)).map((item) =>
      item.kind === "fact" && item.content.kind === "pair"
        ? [item.line, item.content.prompt, item.content.answer, item.content.note, item.content.tags]
        : item,
    );
    expect(rows).toEqual([
      [2, "Brightest star of Lyra", "Vega", "Blue-white,\nright overhead in August", ["star", "summer"]],
      [3, "Apparent magnitude of Sirius", "-1.46", "", []],
      [4, "Messier number of the Andromeda Galaxy", "31", "", []],
      [6, "Uranus was discovered on", "1781-03-13", "", []],
      [7, "Is Pluto a planet after the definition of 2006?", "FALSE", "", []],
      [8, "織姫", 'ベガ, "Vega"', "ليرا", []],
      [9, "Catalogue entry, as text", "0042", "", []],
    ]);
  });

  it("is found in a zip file with its pictures", async () => {
    const zip = new Uint8Array(zipSync({ "sky/list.xlsx": FILE, "sky/lyra.png": Uint8Array.of(137, 80, 78, 71) }));
    const parcel = await openParcel(zip);
    expect([...parcel.files.keys()]).toEqual(["lyra.png"]);
    expect(await facts(zip)).toEqual(await facts(FILE));
  });
});

describe("a hostile spreadsheet", () => {
  const parts = unzipSync(FILE);
  const packed = (change: Readonly<Record<string, Uint8Array>>) =>
    new Uint8Array(zipSync({ ...parts, ...change }, { level: 1 }));
  const sheet = strFromU8(parts["xl/worksheets/sheet1.xml"] ?? new Uint8Array());

  it("that unpacks to more than the limit is refused before it is unpacked", async () => {
    const bomb = packed({ "xl/worksheets/sheet1.xml": new Uint8Array(SPREADSHEET_LIMIT + 1) });
    expect(bomb.length).toBeLessThan(SPREADSHEET_LIMIT / 100);
    await expect(openParcel(bomb)).rejects.toMatchObject({
      failure: { message: expect.stringMatching(/more than 128/) },
    });
  });

  it("has its pictures, macros and files outside left where they are", async () => {
    const large = new Uint8Array(SPREADSHEET_LIMIT);
    const more = packed({ "xl/vbaProject.bin": large, "../outside.xml": large, "xl/media/image1.png": large });
    expect(await facts(more)).toEqual(await facts(FILE));
  });

  it("has no entity unfolded", async () => {
    const lols = `<!DOCTYPE x [<!ENTITY a "${"star ".repeat(1000)}"><!ENTITY b "${"&a;".repeat(1000)}"><!ENTITY c "${"&b;".repeat(1000)}"><!ENTITY f SYSTEM "file:///etc/hostname">]>`;
    const text = sheet.replace(/^(<\?xml[^>]*>)?/u, (head) => head + lols).replace(/<v>31<\/v>/u, "<v>&c;&f;</v>");
    expect(text).toContain("&c;&f;");
    const read = openParcel(packed({ "xl/worksheets/sheet1.xml": strToU8(text) })).then(
      ({ list }) => strFromU8(list),
      (error: Error) => error.message,
    );
    const said = await read;
    expect(said.length).toBeLessThan(5_000);
    expect(said).not.toContain("star star");
  });

  it.each([FILE.subarray(0, 900), FILE.subarray(0, FILE.length - 200)])(
    "that is cut off is told, not read",
    async (cut) => {
      await expect(openParcel(new Uint8Array(cut))).rejects.toMatchObject({ failure: { kind: "invalid-input" } });
    },
  );

  it("whose sheet is no XML is told, or read as far as it goes", async () => {
    for (const broken of ["", "<<<<", "<worksheet><sheetData><row r='1'>", "\u0000\u0001"]) {
      const done = openParcel(packed({ "xl/worksheets/sheet1.xml": strToU8(broken) }));
      await done.then(
        ({ list }) => expect(list.length).toBeLessThan(1_000),
        (error) => expect(error).toMatchObject({ failure: { kind: "invalid-input" } }),
      );
    }
  });

  it("with a cell far outside holds as many rows as it says, and no more memory than the limit", async () => {
    const far = sheet.replace(/r="9"/u, 'r="1048576"').replace(/r="(A|B)9"/gu, 'r="$11048576"');
    const done = openParcel(packed({ "xl/worksheets/sheet1.xml": strToU8(far) }));
    await done.then(
      ({ list }) => expect(list.length).toBeLessThan(SPREADSHEET_LIMIT),
      (error) => expect(error).toMatchObject({ failure: { kind: "invalid-input" } }),
    );
  });
});
