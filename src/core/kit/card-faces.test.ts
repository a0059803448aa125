import { describe, expect, it } from "vitest";
import { EMPTY_SIDE } from "../cards/cards.ts";
import { faceItems, type KitCard } from "./card-faces.ts";
import type { PictureItem, TextItem } from "./page.ts";

const SLOT = { x: 0, y: 0, width: 105, height: 74, turned: false };
const STYLE = { title: "", mark: "none", language: "en" } as const;
const PHOTO = "a".repeat(64);
const card: KitCard = {
  number: 1042,
  prompt: EMPTY_SIDE,
  answer: { ...EMPTY_SIDE, text: [{ text: "Rigel", role: "plain" }] },
  note: "",
  story: "",
  source: "",
  why: "",
  pictureAlt: "",
  pictureSource: "",
  pictureLicence: "",
};
const textOf = (face: KitCard, side: "prompt" | "answer", at = 0): TextItem | undefined =>
  faceItems(face, side, SLOT, STYLE).filter((item) => item.kind === "text")[at];
const pictureOf = (face: KitCard, side: "prompt" | "answer"): PictureItem | undefined =>
  faceItems(face, side, SLOT, STYLE).find((item) => item.kind === "picture");

describe("a printed card", () => {
  it("is set in its own language, else in that of the kit", () => {
    const text = (words: string) => ({ ...EMPTY_SIDE, text: [{ text: words, role: "plain" } as const] });
    const languages = (words: string, language?: string) =>
      textOf({ ...card, answer: text(words), ...(language === undefined ? {} : { language }) }, "answer")?.language;
    expect(languages("Hauptreihenstern", "de-AT")).toBe("de");
    expect(languages("Hauptreihenstern", "")).toBe("en");
    expect(languages("Hauptreihenstern")).toBe("en");
    expect(languages("織女星", "ja")).toBe("ja");
    expect(languages("織女星", "zh-Hant")).toBe("zh");
    expect(languages("النسر", "de")).toBe("ar");
  });

  it("has a formula as a run of its own, which tells neither language nor line breaks", () => {
    const text = [{ text: "Kepler: ", role: "plain" } as const, { text: "T^2 \\propto a^3", role: "formula" } as const];
    const item = textOf({ ...card, prompt: { ...EMPTY_SIDE, text } }, "prompt");
    expect(item?.runs).toEqual([
      { text: "Kepler: ", look: "plain" },
      { text: "T^2 \\propto a^3", look: "formula" },
    ]);
    expect(item?.longest).toBe("Kepler:");
  });

  it("has formulae in its notes too, and the why question with them, but only behind the answer", () => {
    const noted = { ...card, prompt: card.answer, note: "So \\(a=1\\)", why: "Why is it so bright?" };
    const runs = textOf(noted, "answer", 1)?.runs ?? [];
    expect(runs.map(({ text, look }) => `${look} ${text}`)).toEqual([
      "plain So ",
      "formula a=1",
      "plain \nWhy is it so bright?",
    ]);
    expect(textOf(noted, "prompt", 1)).toBeUndefined();
  });

  it("covers the region that is asked, outlines it behind, and says what the picture shows", () => {
    const region = { x: 0.1, y: 0.2, width: 0.3, height: 0.4 };
    const side = { ...EMPTY_SIDE, picture: PHOTO, cover: region };
    const labelled = { ...card, prompt: side, answer: { ...card.answer, ...side }, pictureAlt: "Seven stars" };
    expect(pictureOf(labelled, "prompt")).toMatchObject({ region: { ...region, look: "covered" }, alt: "Seven stars" });
    expect(pictureOf(labelled, "answer")?.region?.look).toBe("outlined");
    expect(pictureOf({ ...card, prompt: { ...side, cover: null } }, "prompt")).toMatchObject({
      region: null,
      alt: "Picture asked on card 1042-9",
    });
  });

  it("says that a sound needs a screen", () => {
    const heard = { ...card, prompt: { ...EMPTY_SIDE, sound: PHOTO } };
    expect(textOf(heard, "prompt")?.runs).toEqual([{ text: "(a sound: play it on a screen)", look: "plain" }]);
  });

  it("names where a picture is from and how it may be used", () => {
    const credited = { ...card, pictureSource: "A. Hill", pictureLicence: "CC BY 4.0" };
    expect(textOf(credited, "answer", 1)?.runs).toEqual([{ text: "Picture: A. Hill, CC BY 4.0", look: "plain" }]);
  });
});
