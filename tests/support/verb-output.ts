// Running a verb inside the test, without a process.
import { expect } from "vitest";
import type { Call, Verb } from "../../src/cli/verb.ts";

/** What a verb prints when it is called with these options; it must end well. Bad usage is thrown as an error. */
export async function printedBy(
  verb: Verb,
  values: Call["values"],
  positionals: readonly string[] = [],
): Promise<string> {
  let text = "";
  const out = (more: string): void => {
    text += more;
  };
  const status = await verb.run({ values, positionals: [...positionals], usage: (message) => new Error(message), out });
  expect(status).toBe(0);
  return text;
}
