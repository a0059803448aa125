import { expect, it } from "vitest";
import { renumberLabels } from "./label-numbers.ts";

const label = (number: number, name: string) => ({ number, name, x: 0.1, y: 0.1, width: 0.2, height: 0.2 });

it("a label stays itself by its number, whatever else of it changes", () => {
  const changed = { ...label(2, "Rigel"), x: 0.7 };
  expect(renumberLabels([1, 2], [changed], [])).toEqual([changed]);
});

it("a new label gets a number that no label of the fact ever had", () => {
  expect(renumberLabels([1, 2], [label(2, "Rigel"), label(3, "Saiph")], [1, 2, 3])).toEqual([
    label(2, "Rigel"),
    label(4, "Saiph"),
  ]);
});

it("two labels that come with one number are two labels", () => {
  expect(renumberLabels([1], [label(1, "Rigel"), label(1, "Saiph")], []).map(({ number }) => number)).toEqual([1, 2]);
});
