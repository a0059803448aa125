import { describe, expect, it } from "vitest";
import { formulaKey } from "../core/kit/formulae.ts";
import { type KitPage, textItem } from "../core/kit/page.ts";
import { drawFormulae } from "./draw-formulae.ts";

const page = (...formulae: readonly string[]): KitPage => ({
  width: 210,
  height: 297,
  items: formulae.map((text) =>
    textItem({ x: 0, y: 0, width: 50, height: 20 }, "", { name: "a card", runs: [{ text, look: "formula" }] }),
  ),
});
const draw = async (tex: string) => {
  const { byKey, notices } = await drawFormulae([page(tex)]);
  return { drawn: byKey.get(formulaKey({ text: tex })), notices };
};

/** What one sees apart from styles: outlines and rules. */
const outlines = (svg: string | undefined): readonly string[] =>
  [...(svg ?? "").matchAll(/ d="([^"]*)"/g)].map(([, path]) => path ?? "");

describe("a drawing of a formula", () => {
  it.each([
    "T^2 \\propto a^3",
    "m - M = 5\\log_{10}\\left(\\frac{d}{10\\,\\mathrm{pc}}\\right)",
    "\\begin{cases} 1 & x > 0 \\\\ 0 & \\text{else} \\end{cases}",
    "a \\\\ b",
    "\\ce{4 ^1H -> ^4He + 2 e+}",
    "\\pdv{f}{x} + \\abs{x} \\in \\R",
    "\\text{織女} + \\alpha",
    "\\astrosun",
  ])("is made of %s, for text of any colour", async (tex) => {
    const { drawn, notices } = await draw(tex);
    expect(notices).toEqual([]);
    expect(outlines(drawn?.svg).length).toBeGreaterThan(0);
    expect(drawn?.svg).toContain('fill="currentColor"');
    expect(drawn?.svg).not.toContain("data-latex");
  });

  it("goes as far below the base line as the formula does", async () => {
    const [flat, deep] = [await draw("x"), await draw("\\frac{x}{y}")];
    expect(Math.abs(flat.drawn?.box.depth ?? 1)).toBeLessThan(0.05);
    expect(deep.drawn?.box.depth).toBeGreaterThan(0.3);
  });

  it("has room where it stands alone", async () => {
    const runs = [{ text: "\\frac{x}{y}", look: "formula", alone: true } as const];
    const items = [textItem({ x: 0, y: 0, width: 50, height: 20 }, "", { runs })];
    const { byKey } = await drawFormulae([{ width: 210, height: 297, items }]);
    const [alone] = [...byKey.values()];
    const inLine = (await draw("\\frac{x}{y}")).drawn;
    expect(alone?.box.ascent).toBeGreaterThan(1.2 * (inLine?.box.ascent ?? Infinity));
  });

  it("knows nothing of what another formula defined", async () => {
    expect((await draw("\\def\\star{b}\\gdef\\mine{c}\\star\\mine")).drawn).toBeDefined();
    expect((await draw("\\mine")).drawn).toBeUndefined();
    expect(outlines((await draw("\\star")).drawn?.svg)).not.toEqual(outlines((await draw("b")).drawn?.svg));
  });
});

/** Macros that become ten, a hundred, a thousand times as long. */
const GROWING = `\\def\\a{${"x".repeat(10)}}\\def\\b{${"\\a".repeat(10)}}\\def\\c{${"\\b".repeat(10)}}${"\\c".repeat(4)}`;

describe("a formula that cannot be drawn", () => {
  it.each([
    ["is unknown", "\\foo{x}"],
    ["does not end", "\\frac{1}{"],
    ["links", "\\href{file:///etc/hostname}{x}"],
    ["loads more of a program", "\\require{html} x"],
    ["reads a file", "\\input{/etc/hostname}"],
    ["brings a picture", "\\includegraphics{/etc/hostname}"],
    ["brings styles", "\\htmlStyle{color:red}{x}"],
    ["names a colour by an address", "\\color{url(file:///x)}x"],
    ["unfolds for ever", "\\def\\a{\\a}\\a"],
    ["doubles for ever", "\\def\\a{\\a\\a}\\a"],
    ["grows large", GROWING],
    ["lies deep in itself", `${"\\sqrt{".repeat(300)}x${"}".repeat(300)}`],
    ["is very long", `x + ${"y".repeat(2_000)}`],
    ["is wider than any sheet", "x".repeat(1_999)],
    ["breaks out of the drawing", "\\text{</svg><script>&\"'}"],
  ])("because it %s is told, and has no drawing", async (_, tex) => {
    const { drawn, notices } = await draw(tex);
    expect(drawn).toBeUndefined();
    expect(notices).toHaveLength(1);
    expect(notices[0]).toContain("a card");
  });

  it("keeps none of the others from being drawn", async () => {
    const { byKey, notices } = await drawFormulae([page("x", "\\foo", "y")]);
    expect([...byKey.keys()]).toEqual(["x", "y"].map((text) => formulaKey({ text })));
    expect(notices).toHaveLength(1);
  });
});
