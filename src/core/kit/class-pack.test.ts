import { describe, expect, it } from "vitest";
import { kitCard, kitPlan } from "../../../tests/support/kit-plan.ts";
import { dividersOf } from "./divider-pages.ts";
import { type KitPlan, kitParts } from "./kit-pages.ts";
import type { KitPage } from "./page.ts";

const cards = Array.from({ length: 9 }, (_, i) => kitCard(i + 1, `prompt ${i + 1}`, `answer ${i + 1}`));

const partsOf = (more: Partial<KitPlan>) => {
  const parts = kitParts(kitPlan({ cards, ...more }));
  if (!parts.ok) throw new Error(parts.error);
  return parts.value;
};

const wordsOf = (pages: readonly KitPage[]): readonly string[] =>
  pages.flatMap(({ items }) => items.flatMap((item) => (item.kind === "text" ? item.runs.map((run) => run.text) : [])));

describe("a class pack", () => {
  it("holds every part for each name, in the order of the names, and the calibration page once", () => {
    const pack = { names: ["Amira", "Björn", "Chidi"], onCards: false };
    const parts = partsOf({ pack, parts: new Set(["calibration", "cards", "dividers", "instructions"]) });
    expect(parts.map(({ owner, part }) => `${owner} ${part}`.trim())).toEqual([
      "calibration",
      ...pack.names.flatMap((name) => [`${name} instructions`, `${name} cards`, `${name} dividers`]),
    ]);
  });

  it("writes the name on every divider, and on the cards only if that is wanted", () => {
    for (const onCards of [false, true])
      for (const { owner, part, pages } of partsOf({
        pack: { names: ["Amira", "Björn"], onCards },
        parts: new Set(["cards", "dividers"]),
      })) {
        const named = wordsOf(pages).filter((words) => words.includes(owner));
        const dividers = dividersOf(kitPlan({}).chart, 105).length;
        // A card has its title on both sides.
        expect(named).toHaveLength(part === "dividers" ? dividers : onCards ? 2 * cards.length : 0);
        if (part === "cards") for (const words of named) expect(words).toBe(`The night sky · ${owner}`);
      }
  });

  it("sets the title of a card's own subject before the name", () => {
    const moons = { ...kitCard(1, "Largest moon of Saturn", "Titan"), title: "Moons" };
    const [part] = partsOf({ cards: [moons], pack: { names: ["Amira"], onCards: true } });
    expect(wordsOf(part?.pages ?? []).filter((words) => words.includes("Amira"))).toEqual([
      "Moons · Amira",
      "Moons · Amira",
    ]);
  });
});
