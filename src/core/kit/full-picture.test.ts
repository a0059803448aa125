import { describe, expect, it } from "vitest";
import { kitCard, kitPlan } from "../../../tests/support/kit-plan.ts";
import { EMPTY_SIDE } from "../cards/cards.ts";
import type { KitCard } from "./card-faces.ts";
import { kitPages } from "./kit-pages.ts";
import type { PageItem, PictureItem } from "./page.ts";

const PHOTO = { ...EMPTY_SIDE, picture: "photo" };

/** The items of the front of a card that is printed with 2 mm of bleed; its picture has so many dots. */
function front(card: Partial<KitCard>, dots = { width: 1050, height: 740 }, bleed = 2): readonly PageItem[] {
  const style = { title: "The night sky", mark: "both", language: "en" } as const;
  const cards = [{ ...kitCard(1042, "", "Vega"), ...card }];
  const pages = kitPages(kitPlan({ cards, bleed, style }), () => dots);
  return pages.ok ? (pages.value[0]?.items ?? []) : [];
}

const isLine = ({ kind }: PageItem): boolean => kind === "line";

const pictureOf = (items: readonly PageItem[]): PictureItem | undefined =>
  items.find((item) => item.kind === "picture");

describe("a side that is a picture alone", () => {
  it("is printed past the cut, its number and code on white ground, without a title", () => {
    const items = front({ prompt: PHOTO });
    expect(pictureOf(items)).toMatchObject({ fit: "filling", width: 109, height: 78 });
    const [number, code] = [
      items.findIndex(({ kind }) => kind === "text"),
      items.findIndex(({ kind }) => kind === "code"),
    ];
    for (const at of [number, code]) expect(items[at - 1]).toMatchObject({ kind: "box", shade: 0 });
    expect(items.filter(({ kind }) => kind === "text")).toHaveLength(1);
  });

  it.each<[string, Partial<KitCard>, { width: number; height: number }?]>([
    ["there are words too", { prompt: { ...PHOTO, text: [{ text: "Vega", role: "plain" }] } }],
    ["a region of it is asked", { prompt: { ...PHOTO, cover: { x: 0, y: 0, width: 0.5, height: 0.5 } } }],
    ["a sound goes with it", { prompt: { ...PHOTO, sound: "sound" } }],
    // Filling 105 × 74 mm a square of 105 mm loses 30 %.
    ["its form is too far from the card's", { prompt: PHOTO }, { width: 1000, height: 1000 }],
  ])("keeps its white edge if %s", (_why, card, dots) => {
    const picture = pictureOf(front(card, dots));
    expect(picture?.fit).toBe("whole");
    expect(picture?.width).toBeLessThan(105);
  });

  it("keeps its white edge without bleed", () => {
    expect(pictureOf(front({ prompt: PHOTO }, undefined, 0))?.fit).toBe("whole");
  });
});

describe("the marks to cut along", () => {
  it.each([0, 3])("are none on a sheet that is one card, with %d mm of bleed", (bleed) => {
    const pages = kitPages(kitPlan({ cards: [kitCard(1, "Vega", "Lyra")], sheet: { width: 105, height: 74 }, bleed }));
    expect(
      pages.ok && pages.value.map(({ width, height, items }) => [width, height, items.filter(isLine).length]),
    ).toEqual(Array(2).fill([105 + 2 * bleed, 74 + 2 * bleed, 0]));
  });

  it("lie in what is cut away, beside every corner, if there is bleed", () => {
    const items = front({ prompt: PHOTO });
    const lines = items.flatMap((item) => (item.kind === "line" ? [item] : []));
    // Two cards and two rows fit on the lying sheet: 16 corners with two strokes each, of which 4 × 2 are shared.
    expect(lines).toHaveLength(24);
    const { x = 0, y = 0 } = pictureOf(items) ?? {};
    for (const { from, to } of lines) {
      const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
      const inside = middle[0] > x + 2 && middle[0] < x + 107 && middle[1] > y + 2 && middle[1] < y + 76;
      expect(inside).toBe(false);
    }
  });
});
