import { describe, expect, it } from "vitest";
import { type Fact, NO_EXTRAS } from "./fact.ts";
import { mergeFacts } from "./merge-facts.ts";

const fact = (more: Partial<Extract<Fact, { kind: "pair" }>>): Extract<Fact, { kind: "pair" }> => ({
  kind: "pair",
  prompt: "Brightest star of Lyra",
  answer: "Vega",
  ...NO_EXTRAS,
  id: "a",
  subject: "sky",
  angles: ["forward"],
  ...more,
});

describe("merging facts", () => {
  it("keeps the first one's wording and identity, and what the others have beside theirs", () => {
    const kept = fact({ note: "Zenith in summer.", tags: ["summer"] });
    const other = fact({
      id: "b",
      prompt: "brightest star of lyra",
      note: "Blue-white.",
      story: "A swooping eagle.",
      tags: ["star", "summer"],
      picture: "f".repeat(64),
      angles: ["reverse"],
    });
    expect(mergeFacts(kept, [other])).toEqual({
      ...kept,
      note: "Zenith in summer.\nBlue-white.",
      story: "A swooping eagle.",
      tags: ["summer", "star"],
      picture: "f".repeat(64),
      angles: ["forward", "reverse"],
    });
  });

  it("says nothing twice", () => {
    const kept = fact({ note: "Blue-white.", source: "own eyes" });
    expect(mergeFacts(kept, [fact({ id: "b", note: " Blue-white. ", source: "own eyes" })])).toEqual(kept);
  });

  it("changes nothing without others", () => {
    const kept = fact({ tags: ["a"], angles: ["reverse"] });
    expect(mergeFacts(kept, [])).toEqual(kept);
  });
});
