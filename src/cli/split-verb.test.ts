import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { withFolder } from "../../tests/support/program.ts";
import { printedBy } from "../../tests/support/verb-output.ts";
import { splitVerb } from "./split-verb.ts";

const split = (text: string, json: boolean) =>
  withFolder(async (folder) => {
    const file = join(folder, "text.txt");
    writeFileSync(file, text);
    return printedBy(splitVerb, { json }, [file]);
  });

it("gives every proposal with the words it came from and where they stand", async () => {
  const text = "The planet was found on 13 March 1781. It is far.\r\n";
  const [one] = JSON.parse(await split(text, true)) as { blanks: { from: number; text: string; why: string }[] }[];
  expect(one).toMatchObject({
    kind: "statement",
    source: { from: 0, to: 38 },
    text: "The planet was found on 13 March 1781.",
  });
  expect(one?.blanks.map(({ from, text, why }) => [from, text, why])).toEqual([
    [24, "13", "date"],
    [27, "March", "date"],
    [33, "1781", "date"],
  ]);
});

it("prints lists and blanks in words", async () => {
  expect(await split("Summer Triangle: Vega, Deneb, Altair", false)).toBe(
    "list: Summer Triangle\n  1. Vega\n  2. Deneb\n  3. Altair\n",
  );
  expect(await split("It has 14 moons.", false)).toBe("It has 14 moons.\n  number: 14\n");
});

it("refuses what is too long to look through", async () => {
  await expect(split("Vega. ".repeat(10_000), true)).rejects.toMatchObject({ failure: { kind: "too-large" } });
});
