import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { settleBidi } from "./bidi-controls.ts";

const CONTROLS = ["\u202a", "\u202b", "\u202c", "\u202d", "\u202e", "\u2066", "\u2067", "\u2068", "\u2069"];
const wild = fc.string({ unit: fc.constantFrom("a", "ש", "\n", ...CONTROLS), maxLength: 14 });

/** How many embeddings and isolates a line leaves open, by the rules X1 to X8 of UAX 9; -1 once one too many is closed. */
function leftOpen(line: string): number {
  const stack: string[] = [];
  for (const c of line) {
    if ("\u202a\u202b\u202d\u202e\u2066\u2067\u2068".includes(c)) stack.push(c);
    if (c === "\u202c" && !"\u202a\u202b\u202d\u202e".includes(stack.pop() ?? "none")) return -1;
    if (c === "\u2069") {
      const at = Math.max(...["\u2066", "\u2067", "\u2068"].map((one) => stack.lastIndexOf(one)));
      if (at < 0) return -1;
      stack.length = at;
    }
  }
  return stack.length;
}

describe("controls of the direction of writing", () => {
  it("never override the order of letters: a name cannot be shown turned round", () => {
    expect(settleBidi("\u202eageV\u202c rises")).toBe("ageV rises");
    expect(settleBidi("\u202dVega")).toBe("Vega");
  });

  it("are closed where they were left open, so that they change nothing beside the text", () => {
    expect(settleBidi("a \u2067כוכב")).toBe("a \u2067כוכב\u2069");
    expect(settleBidi("\u202bכוכב \u2066Vega\nb")).toBe("\u202bכוכב \u2066Vega\u2069\u202c\nb");
  });

  it("are left out where they close nothing", () => {
    expect(settleBidi("Vega\u202c\u2069")).toBe("Vega");
    expect(settleBidi("\u2068Vega\u202c\u2069")).toBe("\u2068Vega\u2069");
  });

  it("stay where they are in order, and so do marks of direction", () => {
    const text = "כוכב \u2068(α)\u2069 \u202aLyr\u202c \u200f!\u200e";
    expect(settleBidi(text)).toBe(text);
  });

  it("are in order in every settled text, line by line, and settling it again changes nothing", () => {
    fc.assert(
      fc.property(wild, (text) => {
        const settled = settleBidi(text);
        expect(settled).not.toMatch(/[\u202d\u202e]/);
        expect(settled.split("\n").map(leftOpen)).toEqual(text.split("\n").map(() => 0));
        expect(settleBidi(settled)).toBe(settled);
        expect(settled.replace(/[\u202a-\u202e\u2066-\u2069]/g, "")).toBe(
          text.replace(/[\u202a-\u202e\u2066-\u2069]/g, ""),
        );
      }),
    );
  });
});
