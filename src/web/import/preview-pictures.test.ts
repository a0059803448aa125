import { expect, test } from "vitest";
import { cardsOf } from "../../core/cards/cards.ts";
import { NO_EXTRAS } from "../../core/facts/fact.ts";
import { pictureNameOf } from "./preview-pictures.ts";

const preview = {
  columns: ["answer", "picture"] as const,
  sample: [
    ["Answer", "Picture"],
    ["Lyra", "lyra.png"],
    ["Cygnus", ""],
  ],
};
const picture = (name: string) =>
  cardsOf({
    kind: "picture",
    name,
    ...NO_EXTRAS,
    picture: "0".repeat(64),
    id: "line-2",
    subject: "",
    angles: ["picture-to-name", "name-to-picture"],
  });

test("a card finds the file that stands in its row, whichever way it is asked", () => {
  expect(picture("Lyra").map((card) => pictureNameOf(card, preview))).toEqual(["lyra.png", "lyra.png"]);
});

test("a card that is not among the first rows has no known file", () => {
  expect(picture("Aquila").map((card) => pictureNameOf(card, preview))).toEqual([null, null]);
});
