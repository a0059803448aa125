import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kitCard, words } from "../../../tests/support/kit-plan.ts";
import type { KitCard } from "./card-faces.ts";
import { needsPrinting, type PaperRecord, paperState } from "./paper-state.ts";
import { faceChanges, faceText, isSameFace, type PrintedFace, printedFace } from "./printed-face.ts";

const VEGA = kitCard(1042, "Brightest star of Lyra", "Vega", "Magnitude 0.03");
const record = (card: KitCard, more: Partial<PaperRecord> = {}): PaperRecord => ({
  last: "printed",
  at: 2,
  face: printedFace(card),
  printedAt: 2,
  ...more,
});

describe("a printed face", () => {
  it.each<[string, Partial<KitCard>]>([
    ["the prompt", { prompt: words("The brightest star of Lyra") }],
    ["the answer", { answer: words("Alpha Lyrae") }],
    ["the note", { note: "Magnitude 0.0" }],
    ["the story", { story: "A lyre that Hermes made" }],
    ["the reason", { why: "It marks the summer triangle" }],
    ["the source", { source: "Star atlas" }],
    ["the credit of the picture", { pictureLicence: "CC0" }],
    ["the picture", { answer: { ...words("Vega"), picture: "p" } }],
    ["what a picture covers", { prompt: { ...VEGA.prompt, cover: { x: 0, y: 0, width: 0.5, height: 0.5 } } }],
    ["where a sound is", { prompt: { ...VEGA.prompt, sound: "s" } }],
    ["what is underlined", { answer: { ...VEGA.answer, text: [{ text: "Vega", role: "answer" }] } }],
  ])("differs when %s differs", (_, more) => {
    expect(isSameFace(printedFace(VEGA), printedFace({ ...VEGA, ...more }))).toBe(false);
    expect(faceChanges(printedFace(VEGA), printedFace({ ...VEGA, ...more }))).toHaveLength(1);
  });

  it("is the same when only what is not printed differs", () => {
    expect(isSameFace(printedFace(VEGA), printedFace({ ...VEGA, pictureAlt: "A bright star" }))).toBe(true);
    expect(faceChanges(printedFace(VEGA), printedFace({ ...VEGA, pictureAlt: "A bright star" }))).toEqual([]);
  });

  it("comes back from its text as it was", () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.string(), (prompt, answer, note) => {
        const face = printedFace(kitCard(1, prompt, answer, note));
        expect(isSameFace(JSON.parse(faceText(face)) as PrintedFace, face)).toBe(true);
      }),
    );
  });

  it("tells the old and the new wording", () => {
    const now = { ...VEGA, prompt: words("Fifth brightest star of the sky"), note: "" };
    expect(faceChanges(printedFace(VEGA), printedFace(now))).toEqual([
      { part: "prompt", before: "Brightest star of Lyra", after: "Fifth brightest star of the sky", picture: false },
      { part: "notes", before: "Magnitude 0.03", after: "", picture: false },
    ]);
  });
});

describe("the paper of a card", () => {
  it("is new until it is printed, then current, changed once the fact says something else", () => {
    expect(paperState(printedFace(VEGA), undefined)).toBe("new");
    expect(paperState(printedFace(VEGA), record(VEGA))).toBe("current");
    expect(paperState(printedFace({ ...VEGA, note: "" }), record(VEGA))).toBe("changed");
  });

  it("that is lost or damaged says so, changed or not", () => {
    for (const last of ["lost", "damaged"] as const)
      for (const note of ["", VEGA.note])
        expect(paperState(printedFace({ ...VEGA, note }), record(VEGA, { last }))).toBe(last);
  });

  it("is printed anew in every state but current and withdrawn", () => {
    const states = ["new", "current", "changed", "lost", "damaged", "withdrawn"] as const;
    expect(states.filter(needsPrinting)).toEqual(["new", "changed", "lost", "damaged"]);
  });
});
