import { describe, expect, it } from "vitest";
import type { ChartFigures } from "./chart-figures.ts";
import { aboveWords, figureLines, paceWords, percent, skylineWords } from "./figure-words.ts";

const FIGURES: ChartFigures = {
  tabs: 18,
  cycle: 2,
  byDay: [90, 130],
  mean: 110,
  peak: 130,
  aboveMean: 0.1818,
  longestWait: 58,
  daysUntilKept: 135.7,
  reviewsPerCard: 10.9075,
  recallAYearOn: 0.8674,
};

const sentences = (figures: ChartFigures): readonly string[] =>
  figureLines(figures).map(({ figure, words }) => `${figure} ${words}`);

describe("figures in words", () => {
  it("say a share in per cent, finely where it is small", () => {
    expect([0, 0.0004, 0.0073, 0.05, 0.266, 0.0999, 1, 5.84].map(percent)).toEqual(
      ["0 %", "0 %", "0.7 %", "5 %", "27 %", "10 %", "100 %", "584 %"].map((text) => text.replace(" ", "\u00a0")),
    );
  });

  it("say how far the worst day lies above the mean, in times of it where it is more than double", () => {
    expect(aboveWords(0)).toBe("as on every day");
    expect(aboveWords(0.266)).toBe("27\u00a0% above the mean");
    expect(aboveWords(5.65)).toBe("6.7 times the mean");
  });

  it("make a sentence of each figure", () => {
    expect(sentences(FIGURES)).toEqual([
      "18 tabs to keep apart",
      "110 cards asked on the mean day",
      "130 on the worst day, 18\u00a0% above the mean",
      "58 days at most between two askings of a card",
      "136 days until a card is kept, on average",
      "10.9 askings of a card until it is kept",
      "87\u00a0% of kept cards recalled a year on, as predicted",
    ]);
    expect(sentences({ ...FIGURES, tabs: 1, mean: 1, longestWait: 1 })[0]).toBe("1 tab to keep apart");
  });

  it("describe the drawing", () => {
    expect(skylineWords(FIGURES)).toBe("From 90 to 130 cards a day over a cycle of 2 days, mean 110.");
  });

  it("say for which pace they are", () => {
    expect(paceWords(10, 10)).toBe("with 10 new cards on every practice day.");
    expect(paceWords(8.57, 8.57)).toBe("with 8.6 new cards on every practice day.");
    expect(paceWords(1, 1)).toBe("with 1 new card on every practice day.");
    expect(paceWords(0, 10)).toBe("if there were 10 new cards on every practice day; none are planned.");
  });
});
