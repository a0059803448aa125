import { expect, it } from "vitest";
import { splitText } from "../../../core/splitting/split-text.ts";
import { NOTHING_TICKED, stretchKey, tickedFacts, toggled } from "./ticked.ts";

const TEXT = "The planet was found by Galle in 1846. It has 14 moons.";

it("makes a statement of each sentence of which something is ticked, with only that as gaps", () => {
  const proposals = splitText(TEXT);
  const key = (words: string) => stretchKey({ from: TEXT.indexOf(words), to: TEXT.indexOf(words) + words.length });
  const ticked = ["Galle", "1846"].reduce((all, words) => toggled(all, "blanks", key(words)), NOTHING_TICKED);
  expect(tickedFacts(proposals, ticked, "en")).toMatchObject([
    { kind: "statement", statement: "The planet was found by [Galle] in [1846].", language: "en" },
  ]);
  expect(tickedFacts(proposals, toggled(toggled(ticked, "blanks", key("Galle")), "blanks", key("1846")), "")).toEqual(
    [],
  );
});

it("makes a list only under a title", () => {
  const proposals = splitText("Vega\nDeneb\nAltair");
  const key = stretchKey(proposals[0]?.source ?? { from: 0, to: 0 });
  const ticked = toggled(NOTHING_TICKED, "lists", key);
  expect(tickedFacts(proposals, ticked, "")).toEqual([]);
  const titled = { ...ticked, titles: new Map([[key, "Summer Triangle"]]) };
  expect(tickedFacts(proposals, titled, "")).toMatchObject([{ kind: "list", title: "Summer Triangle" }]);
});
