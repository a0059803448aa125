import { describe, expect, it } from "vitest";
import type { KitPreview } from "../../app/print-views.ts";
import { freshDraft, settleDraft } from "./kit-draft.ts";
import { bytesWords, isPrinted, kitWords, paperWords, toPrint } from "./kit-words.ts";

const NONE = { new: 0, current: 0, changed: 0, lost: 0, damaged: 0, withdrawn: 0 };
const draft = settleDraft(freshDraft("en-GB"), { subjects: ["sky"], printed: false, names: "" });
const preview: KitPreview = {
  ...{ pages: 6, cards: 10, boxes: 1, sheet: 0, size: { width: 210, height: 297 }, sides: [], notices: [] },
  parts: [
    { part: "instructions", sheets: 1 },
    { part: "cards", sheets: 2 },
  ],
};

describe("what will be printed", () => {
  it("is told in sheets and cards, and for a class in boxes", () => {
    expect(kitWords(preview, draft)).toBe("3 sheets, 10 cards");
    expect(kitWords({ ...preview, boxes: 12 }, draft)).toBe("12 boxes of 3 sheets, 10 cards each");
    expect(kitWords(preview, { ...draft, parts: ["instructions"] })).toBe("3 sheets");
  });

  it("is nothing for a reason", () => {
    const nothing = { ...preview, pages: 0, cards: 0, parts: [] };
    expect(kitWords(nothing, { ...draft, parts: [] })).toBe("Nothing is ticked yet");
    expect(kitWords(nothing, { ...draft, only: "changed" })).toContain("up to date");
    expect(kitWords(nothing, draft)).toBe("There is nothing to print");
  });
});

describe("how paper stands", () => {
  it("is told with what is wrong and what is missing", () => {
    expect(paperWords({ ...NONE, current: 540 })).toBe("540 paper cards are as they should be.");
    expect(paperWords({ new: 1, current: 1, changed: 2, lost: 1, damaged: 3, withdrawn: 4 })).toBe(
      "1 paper card is as it should be; 2 changed since, 1 lost, 3 damaged, 4 not asked any more. 1 card is not on paper yet.",
    );
  });

  it("needs printing for whatever is missing or wrong, and not for what is to be taken out", () => {
    expect(toPrint({ new: 1, current: 10, changed: 2, lost: 3, damaged: 4, withdrawn: 100 })).toBe(10);
  });

  it("is known once anything was printed", () => {
    expect(isPrinted({ ...NONE, new: 9 })).toBe(false);
    expect(isPrinted({ ...NONE, lost: 1 })).toBe(true);
  });
});

it("a size of a file is told in two or three figures", () => {
  expect([0, 1_499, 999_499, 2_449_000].map(bytesWords)).toEqual(["1 kB", "1 kB", "999 kB", "2.4 MB"]);
});
