import { describe, expect, it } from "vitest";
import { type Fact, NO_EXTRAS } from "./fact.ts";
import { findDuplicates } from "./find-duplicates.ts";

const pair = (prompt: string, answer: string): Fact => ({
  ...NO_EXTRAS,
  kind: "pair",
  prompt,
  answer,
  id: `${prompt}/${answer}`,
  subject: "sky",
  angles: ["forward"],
});

const same = async (a: Fact, b: Fact): Promise<boolean> => (await findDuplicates([a, b])).length === 1;

describe("duplicates", () => {
  it.each([
    [pair("Brightest star of Boötes", "Arcturus"), pair("brightest  star of Bootes?", "Arcturus.")],
    [pair("Étoile polaire", "Polaris"), pair("etoile polaire", "Polaris")],
    [pair("Где Вега?", "В Лире"), pair("где вега", "в лире")],
    [pair("織姫", "ベガ"), pair("織姫 ", "ベガ。")],
  ])("%s and %s say the same", async (a, b) => expect(await same(a, b)).toBe(true));

  it.each([
    [pair("Magnitude of Sirius", "-1.46"), pair("Magnitude of Sirius", "1.46")],
    [pair("Magnitude", "1.5"), pair("Magnitude", "15")],
    [pair("Vega", "Lyra"), pair("Lyra", "Vega")],
    [pair("तारा", "star"), pair("तार", "star")],
    [pair("はし", "bridge"), pair("ばし", "bridge")],
    [pair("a b", "c"), pair("a", "b c")],
  ])("%s and %s do not", async (a, b) => expect(await same(a, b)).toBe(false));

  it("come in groups, in the order in which they came", async () => {
    const facts = [pair("A", "1"), pair("B", "2"), pair("b", "2"), pair("a", "1"), pair("C", "3"), pair("a.", "1")];
    const groups = await findDuplicates(facts);
    expect(groups.map((group) => group.map((fact) => facts.indexOf(fact)))).toEqual([
      [0, 3, 5],
      [1, 2],
    ]);
  });
});
