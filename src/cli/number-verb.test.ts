import { describe, expect, it } from "vitest";
import { numberVerb } from "./number-verb.ts";

async function called(...positionals: string[]): Promise<{ readonly status: number; readonly text: string }> {
  let text = "";
  const out = (more: string): void => {
    text += more;
  };
  const status = await numberVerb.run({ values: {}, positionals, usage: (message) => new Error(message), out });
  return { status, text };
}

describe("longhold number", () => {
  it("makes the check digit that Damm's example has", async () => {
    // Damm's worked example: 572 → 4.
    expect(await called("make", "572")).toEqual({ status: 0, text: "572-4\n" });
  });

  it("takes a sound number, and ends with 1 if any of them is not", async () => {
    expect(await called("check", "572-4", "5724")).toEqual({ status: 0, text: "572-4 is card 572\n".repeat(2) });
    const { status, text } = await called("check", "572-4", "527-4");
    expect(status).toBe(1);
    expect(text).toContain("“527-4” is no card number");
  });

  it.each([[[]], [["check"]], [["tick", "572-4"]]])("refuses %j as bad usage", async (words) => {
    await expect(called(...words)).rejects.toThrow();
  });

  it.each(["0", "-3", "1.5", "12345678901"])("makes no number of %s", async (word) => {
    await expect(called("make", word)).rejects.toThrow("whole number");
  });
});
