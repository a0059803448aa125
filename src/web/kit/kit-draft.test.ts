import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kitSchema } from "../../server/paper-schemas.ts";
import {
  draftProblems,
  freshDraft,
  type KitDraft,
  orderOf,
  readDraft,
  settleDraft,
  sizeText,
  typedSize,
} from "./kit-draft.ts";

const HERE = "en-GB";
const fresh = freshDraft(HERE);
const settled = (more: Partial<KitDraft> = {}, around: Partial<Parameters<typeof settleDraft>[1]> = {}) =>
  settleDraft({ ...fresh, ...more }, { subjects: ["sky", "moon"], printed: false, names: "", ...around });

describe("choices kept on a device", () => {
  it("are read back as they were", () => {
    const chosen: KitDraft = {
      ...fresh,
      subjects: ["sky"],
      parts: ["cards", "pocket"],
      only: "all",
      right: -0.5,
      zip: true,
    };
    expect(readDraft(JSON.stringify(chosen), HERE)).toEqual(chosen);
  });

  it.each([null, "", "[]", "7", "null", "{", '"a4"'])("are the usual ones out of %j", (text) =>
    expect(readDraft(text, HERE)).toEqual(fresh),
  );

  it("lose nothing but what cannot be read", () => {
    const text = JSON.stringify({
      card: "a6",
      paper: 4,
      turn: "sideways",
      parts: ["poster"],
      subjects: [1],
      days: "9",
    });
    expect(readDraft(text, HERE)).toEqual({ ...fresh, card: "a6" });
  });

  it("whatever they hold, give an order that the server can read or a problem that is shown", () =>
    fc.assert(
      fc.property(
        fc.record({ paper: fc.string(), card: fc.string() }, { requiredKeys: [] }),
        fc.string(),
        (kept, names) => {
          const draft = readDraft(JSON.stringify(kept), HERE);
          const whole = settleDraft(draft, { subjects: ["sky"], printed: false, names });
          fc.pre(draft.paper.length <= 40 && draft.card.length <= 40);
          const fit = Object.keys(draftProblems(whole, names)).length === 0;
          expect(kitSchema.safeParse(orderOf(whole, names)).success).toBe(fit);
        },
      ),
    ));

  it("begin with the paper that is sold where one is", () => {
    expect(freshDraft("en-US").paper).toBe("letter");
    expect(freshDraft("pt-PT").paper).toBe("a4");
    expect(freshDraft("en").paper).toBe("a4");
  });
});

describe("what was never chosen", () => {
  it("is everything at first, and only what the paper lacks once there is some", () => {
    expect(settled()).toMatchObject({
      only: "all",
      subjects: ["sky", "moon"],
      parts: expect.arrayContaining(["dividers"]),
    });
    expect(settled({}, { printed: true })).toMatchObject({ only: "changed", parts: ["cards"] });
    expect(settled({ only: "all", parts: ["sheet"] }, { printed: true })).toMatchObject({
      only: "all",
      parts: ["sheet"],
    });
  });

  it("is a whole box for each name of a class, whatever oneself has on paper", () => {
    const pack = settled({ only: "changed" }, { printed: true, names: "Ines Duarte" });
    expect(pack).toMatchObject({ only: "all", parts: expect.arrayContaining(["cards", "dividers"]) });
  });

  it("leaves out subjects that are gone", () => {
    expect(settled({ subjects: ["gone", "moon"] }).subjects).toEqual(["moon"]);
    expect(settled({ subjects: [] }).subjects).toEqual([]);
  });
});

describe("an order", () => {
  it("names a class only where there are names", () => {
    expect(orderOf(settled({ start: "2026-04-01" }), " \n ")).not.toHaveProperty("names");
    expect(orderOf(settled({ start: "2026-04-01", nameOnCards: true }), "Ines Duarte")).toMatchObject({
      names: "Ines Duarte",
      nameOnCards: true,
      start: "2026-04-01",
    });
    expect(orderOf(settled(), "Ines Duarte").start).toBeNull();
  });

  it("prints parts in their order, and cards alone on sheets of their own size", () => {
    const order = orderOf(settled({ parts: ["sheet", "cards"], paper: "card" }), "");
    expect(order.parts).toEqual(["cards", "sheet"]);
    expect(order.paper).toBeNull();
  });
});

describe("a size of one's own", () => {
  it("is taken apart and put together again, also while it is being typed", () => {
    for (const text of ["85x55mm", "3x5in", "x55mm", "85xmm", "2.5x3.5in"])
      expect(sizeText(typedSize(text))).toBe(text);
    expect(sizeText({ width: " 8,5 ", height: "11", unit: "in" })).toBe("8.5x11in");
  });

  it("that is too small or not finished is told in a sentence", () => {
    expect(draftProblems({ ...fresh, card: "9x60mm" }, "").card).toBe(
      "The sides of a card are 40 to 420 mm, not 9 × 60 mm.",
    );
    expect(draftProblems({ ...fresh, paper: "x60mm" }, "").paper).toContain("such as 200x250mm");
    expect(draftProblems(fresh, "Ines\nInes").names).toContain("stands there twice");
    expect(draftProblems({ ...fresh, paper: "card" }, "")).toEqual({});
  });
});
