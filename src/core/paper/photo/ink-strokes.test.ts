import { describe, expect, it } from "vitest";
import { labelStrokes } from "./ink-strokes.ts";

/** A page from rows of # and blanks. */
function pageOf(...rows: readonly string[]) {
  const width = rows[0]?.length ?? 0;
  const dark = Float32Array.from(rows.join(""), (dot) => (dot === "#" ? 0.5 : 0.05));
  return { width, height: rows.length, dark, white: dark };
}

const groupsOf = (...rows: readonly string[]): readonly number[] => [...labelStrokes(pageOf(...rows), 0.1)];

describe("the strokes of a page", () => {
  it("are dots that touch by a side or a corner", () => {
    const labels = groupsOf("#....", ".#..#", "....#");
    expect(labels[0]).toBe(labels[6]);
    expect(labels[9]).toBe(labels[14]);
    expect(labels[0]).not.toBe(labels[9]);
    expect(labels[2]).toBe(0);
  });

  it("are one where branches meet late", () => {
    const labels = groupsOf("#.#.#", "#.#.#", ".#.#.");
    expect(new Set(labels.filter((label) => label > 0)).size).toBe(1);
  });

  it("do not go round the edge of the page", () => {
    const labels = groupsOf("....#", "#....", "....#");
    expect(new Set(labels.filter((label) => label > 0)).size).toBe(3);
  });
});
