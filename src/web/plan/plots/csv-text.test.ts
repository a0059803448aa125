import { expect, test } from "vitest";
import { csvText } from "./csv-text.ts";

test("a table becomes lines of cells, with what is not known left empty", () => {
  const text = csvText(
    ["date", "cards", "sd"],
    [
      ["2026-11-25", 1 / 3, Number.NaN],
      ["2026-11-26", 4, null],
    ],
  );
  expect(text).toBe("date,cards,sd\r\n2026-11-25,0.333333,\r\n2026-11-26,4,\r\n");
});
