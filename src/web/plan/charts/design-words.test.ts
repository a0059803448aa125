import { describe, expect, it } from "vitest";
import { type Design, designChart } from "../../../core/chart/design-chart.ts";
import { doublingPeriods } from "../../../core/chart/make-chart.ts";
import { designWords } from "./design-words.ts";

function design(compartments: number, tabs: number, budget?: number): Design {
  const periods = doublingPeriods(compartments);
  const limit = budget === undefined ? {} : { budget };
  const found = designChart({ periods, recall: periods.map(() => 0.9), tabs, ...limit });
  if (!found.ok) throw new Error(found.error);
  return found.value;
}

describe("a designed chart in words", () => {
  it("says that none does better where every one that could was tried", () => {
    const [found, proof] = designWords(design(7, 18), 18, 20);
    // 218.15 on the mean day, 27 % more on the worst.
    expect(found).toMatch(/^18 tabs keep the worst day at 27\d cards, 27\u00a0% above the mean\.$/);
    expect(proof).toBe("No chart with these periods and at most 18 tabs does better: every one that could was tried.");
  });

  it("says between which loads the best must lie where the search was heuristic", () => {
    const [, proof] = designWords(design(7, 30, 60), 30, 20);
    expect(proof).toMatch(
      /^The search was heuristic: 60 charts were tried, not all\. .* between 218 cards \(the mean, .*\) and 2\d\d \(this one\), so this one is at most \d+\u00a0% above the best\.$/,
    );
  });

  it("says that an even load cannot be bettered", () => {
    const [found, proof] = designWords(design(4, 15), 15, 10);
    expect(found).toBe("15 tabs make every day alike: 52 cards.");
    expect(proof).toMatch(/^No chart does better/);
  });

  it("says how many of the tabs it needs", () => {
    const used = { ...design(4, 15), tabs: 12 };
    expect(designWords(used, 15, 10)[0]).toMatch(/^12 of the 15 tabs allowed make every day alike/);
  });
});
