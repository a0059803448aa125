import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { writeWhole } from "./write-whole.ts";

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "longhold-write-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

const file = (name = "box.ics"): string => join(folder, name);
const kindOf = (work: () => void): unknown => {
  try {
    work();
  } catch (error) {
    return (error as { failure?: { kind: string; message: string } }).failure;
  }
  return undefined;
};

describe("writing a file whole", () => {
  it("makes it, or replaces what was there, and leaves nothing else behind", () => {
    writeWhole(file(), "first, and longer");
    writeWhole(file(), "second");
    expect(readFileSync(file(), "utf8")).toBe("second");
    expect(readdirSync(folder)).toEqual(["box.ics"]);
  });

  it("replaces the file that a link names, not the link", () => {
    writeFileSync(file("real.ics"), "old");
    symlinkSync(file("real.ics"), file());
    writeWhole(file(), "new");
    expect(lstatSync(file()).isSymbolicLink()).toBe(true);
    expect(readFileSync(file("real.ics"), "utf8")).toBe("new");
  });

  it("says so if there is no such folder", () => {
    expect(kindOf(() => writeWhole(file("none/box.ics"), "text"))).toEqual({
      kind: "not-found",
      message: `There is no folder ${file("none")} to write ${file("none/box.ics")} in.`,
    });
  });

  it("leaves alone what is no file", () => {
    mkdirSync(file("box.ics"));
    expect(kindOf(() => writeWhole(file(), "text"))).toMatchObject({ kind: "storage" });
    expect(readdirSync(folder)).toEqual(["box.ics"]);
  });

  it("keeps the old file as it was if the new one cannot be written", () => {
    writeFileSync(file(), "old");
    // Somebody else's file has the name under which the new text would be written first.
    const beside = `box.ics.${process.pid}.part`;
    writeFileSync(file(beside), "theirs");
    expect(kindOf(() => writeWhole(file(), "new"))).toMatchObject({ kind: "storage" });
    expect(readFileSync(file(), "utf8")).toBe("old");
    expect(readFileSync(file(beside), "utf8")).toBe("theirs");
  });
});
