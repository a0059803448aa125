import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formulaRuns } from "./formula-runs.ts";

const plain = (text: string) => ({ text, role: "plain" });
const formula = (text: string) => ({ text, role: "formula" });

describe("formulae in a text", () => {
  it("stand between \\( and \\)", () => {
    expect(formulaRuns("A planet's \\(T^2\\) grows as \\( a^3 \\).")).toEqual([
      plain("A planet's "),
      formula("T^2"),
      plain(" grows as "),
      formula("a^3"),
      plain("."),
    ]);
  });

  it("may hold brackets, and line breaks written \\\\", () => {
    expect(formulaRuns("\\(f(x) = \\begin{matrix} 1 \\\\ 2 \\end{matrix}\\)")).toEqual([
      formula("f(x) = \\begin{matrix} 1 \\\\ 2 \\end{matrix}"),
    ]);
  });

  it.each(["(a)", "\\(a", "a\\)", "\\(\\)", "\\( \\)", "\\(a\\\\)", "", "\\"])("are none in %j", (text) => {
    expect(formulaRuns(text)).toEqual(text === "" ? [] : [plain(text)]);
  });

  it("and the text round them are the whole text, in order", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom("\\", "(", ")", "a", " "), maxLength: 16 }), (text) => {
        const squash = (all: string): string => all.replace(/[ ]/g, "");
        const back = formulaRuns(text).map((run) => (run.role === "plain" ? run.text : `\\(${run.text}\\)`));
        expect(squash(back.join(""))).toBe(squash(text));
      }),
    );
  });
});
