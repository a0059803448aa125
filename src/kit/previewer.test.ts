import { afterAll, describe, expect, it } from "vitest";
import { kitCard, kitPlan } from "../../tests/support/kit-plan.ts";
import { EMPTY_SIDE } from "../core/cards/cards.ts";
import { kitPages } from "../core/kit/kit-pages.ts";
import { createPreviewer } from "./previewer.ts";

const previewer = createPreviewer();
afterAll(() => previewer.close());

const pagesOf = (more: Parameters<typeof kitPlan>[0]) => {
  const pages = kitPages(kitPlan(more));
  if (!pages.ok) throw new Error(pages.error);
  return pages.value;
};

const documentOf = (pages: ReturnType<typeof pagesOf>) => ({
  title: "The night sky",
  language: "en",
  pages,
  pictures: new Map(),
});

/** Width and height of a drawn page in points: 595.28 × 841.89 is A4. */
const sizeOf = (svg: string | undefined) =>
  /viewBox="0 0 ([\d.]+) ([\d.]+)"/
    .exec(svg ?? "")
    ?.slice(1)
    .map((side) => Math.round(Number(side)));

describe("the preview", () => {
  it("draws front and back each by itself, in the size of the sheet", async () => {
    const pages = pagesOf({ cards: [kitCard(1042, "Brightest star of Lyra", "Vega")] });
    const { svgs, notices } = await previewer.draw(documentOf(pages));
    expect(svgs.map(sizeOf)).toEqual([
      [595, 842],
      [595, 842],
    ]);
    expect(svgs[0]).not.toBe(svgs[1]);
    expect(notices).toEqual([]);
  });

  it("names what will not fit, and draws the same page the same way each time", async () => {
    const pages = pagesOf({ cards: [kitCard(7, "star ".repeat(900), "Vega")] });
    const first = await previewer.draw(documentOf(pages));
    expect(first.notices).toEqual([expect.stringContaining("the prompt of card 7-6")]);
    expect(await previewer.draw(documentOf(pages))).toEqual(first);
  });

  it("draws formulae, and says which it cannot draw", async () => {
    const draw = (tex: string) => {
      const prompt = { ...EMPTY_SIDE, text: [{ text: tex, role: "formula" } as const] };
      return previewer.draw(documentOf(pagesOf({ cards: [{ ...kitCard(1, "", "Kepler"), prompt }] })));
    };
    const [law, flaw] = await Promise.all([draw("T^2 \\propto a^3"), draw("\\flaw")]);
    expect(law.notices).toEqual([]);
    expect(law.svgs[0]).toContain("data:image/svg+xml");
    expect(flaw.notices).toEqual([expect.stringContaining("\\flaw")]);
    expect(flaw.svgs[0]).not.toContain("data:image/svg+xml");
  });

  it("answers several questions at once, and again after it was closed", async () => {
    const document = (answer: string) => documentOf(pagesOf({ cards: [kitCard(1, "Largest moon", answer)] }));
    const [one, other] = await Promise.all([
      previewer.draw(document("Ganymede")),
      previewer.draw(document("Ganymede, of Jupiter")),
    ]);
    expect(one.svgs[0]).toBe(other.svgs[0]);
    expect(one.svgs[1]).not.toBe(other.svgs[1]);
    await previewer.close();
    expect(await previewer.draw(document("Ganymede"))).toEqual(one);
  });
});
