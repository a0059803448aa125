import { describe, expect, it } from "vitest";
import { NAME_LIMITS, parseNames } from "./class-names.ts";

const namesIn = (text: string) => {
  const names = parseNames(text);
  if (!names.ok) throw new Error(names.error);
  return names.value;
};

describe("the names of a class", () => {
  it("stand one a line and come out in their order, whatever ends a line", () => {
    expect(namesIn("  Björn\r\nAmira  Haddad\n\n\tÇelik\rBao\n")).toEqual(["Amira Haddad", "Bao", "Björn", "Çelik"]);
    expect(namesIn("Guide 10\nGuide 2")).toEqual(["Guide 2", "Guide 10"]);
  });

  it("may hold commas and any script, and there may be none", () => {
    expect(namesIn("Haddad, Amira\nדנה")).toHaveLength(2);
    expect(namesIn(" \n\n")).toEqual([]);
  });

  it("that stand twice, are endless or too many are refused, and named", () => {
    expect(parseNames("Amira\nBao\n Amira ")).toEqual({ ok: false, error: expect.stringContaining("“Amira”") });
    expect(parseNames("a".repeat(NAME_LIMITS.characters)).ok).toBe(true);
    expect(parseNames("a".repeat(NAME_LIMITS.characters + 1)).ok).toBe(false);
    const many = (count: number) => Array.from({ length: count }, (_, i) => `Guide ${i}`).join("\n");
    expect(parseNames(many(NAME_LIMITS.names)).ok).toBe(true);
    expect(parseNames(many(NAME_LIMITS.names + 1)).ok).toBe(false);
  });
});
