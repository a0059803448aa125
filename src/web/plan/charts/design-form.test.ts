import { describe, expect, it } from "vitest";
import { DESIGN_LIMITS } from "../../../core/chart/design-chart.ts";
import { LEVELLED_CHART, plainChart, spreadChart } from "../../../core/chart/make-chart.ts";
import { type DesignForm, firstForm, formPeriods, formTabs, mostCompartments, tabsRange } from "./design-form.ts";

const FORM: DesignForm = { growth: 2, compartments: 7, typed: "", tabs: 18, dated: false };

const typed = (text: string) => formPeriods({ ...FORM, growth: "own", typed: text });

describe("the periods of the designer's form", () => {
  it("grow by the factor", () => {
    expect(formPeriods(FORM)).toEqual({ ok: true, value: [1, 2, 4, 8, 16, 32, 64] });
    expect(formPeriods({ ...FORM, growth: 3, compartments: 5 })).toEqual({ ok: true, value: [1, 3, 9, 27, 81] });
  });

  it("come round within what can be designed, whatever the number of compartments offered", () => {
    for (const factor of [2, 3]) {
      const most = mostCompartments(factor);
      expect(factor ** (most - 1)).toBeLessThanOrEqual(DESIGN_LIMITS.cycle);
      expect(factor ** most > DESIGN_LIMITS.cycle || most === 12).toBe(true);
    }
    expect([mostCompartments(2), mostCompartments(3)]).toEqual([11, 7]);
  });

  it("are read as they are typed, with commas, spaces or both", () => {
    expect(typed("1,2,4,8")).toEqual({ ok: true, value: [1, 2, 4, 8] });
    expect(typed(" 1 3; 6 , 16, ")).toEqual({ ok: true, value: [1, 3, 6, 16] });
  });

  it("say what is wrong and what to do", () => {
    expect(typed("")).toMatchObject({ ok: false, error: expect.stringContaining("such as 1, 2, 4, 8") });
    expect(typed("1, two, 4")).toMatchObject({ ok: false, error: expect.stringContaining("“two”") });
    expect(typed("1, 2.5")).toMatchObject({ ok: false, error: expect.stringContaining("“2.5”") });
    expect(typed("1, -2")).toMatchObject({ ok: false, error: expect.stringContaining("“-2”") });
    expect(typed("0, 2")).toMatchObject({ ok: false, error: expect.stringMatching(/^Compartment 1: .*not 0\.$/) });
    expect(typed("7, 11, 13, 17")).toMatchObject({ ok: false, error: expect.stringContaining("17,017 days") });
    expect(typed(Array(21).fill("1").join())).toMatchObject({ ok: false, error: expect.stringContaining("not 21") });
  });
});

describe("the designer's form", () => {
  it("begins with the periods and the tabs of a chart", () => {
    expect(firstForm(LEVELLED_CHART)).toMatchObject({ growth: 2, compartments: 7, tabs: 18 });
    expect(firstForm(spreadChart([1, 3, 9]))).toMatchObject({ growth: 3, compartments: 3, tabs: 3 });
    const own = firstForm(spreadChart([1, 3, 6, 16]));
    expect(own).toMatchObject({ growth: "own", tabs: 4 });
    expect(formPeriods(own)).toEqual({ ok: true, value: [1, 3, 6, 16] });
    // Too long to be designed by doubling: the days stand in the field, where they can be changed.
    expect(firstForm(plainChart(12)).growth).toBe("own");
  });
});

describe("the tabs of the designer's form", () => {
  it("reach from one a compartment to one a day, but not beyond 64", () => {
    expect(tabsRange([1, 2, 4])).toEqual({ least: 3, most: 7, dated: 7 });
    expect(tabsRange([1, 2, 4, 8, 16, 32, 64])).toEqual({ least: 7, most: 64, dated: 127 });
    expect(tabsRange([1, 3, 9, 27, 81, 243, 729])).toEqual({ least: 7, most: 64, dated: null });
    expect(tabsRange([1])).toEqual({ least: 1, most: 1, dated: 1 });
  });

  it("are brought within the range, and are one a day for dated cards", () => {
    expect(formTabs(FORM, tabsRange([1, 2, 4]))).toBe(7);
    expect(formTabs({ ...FORM, tabs: 2 }, tabsRange([1, 2, 4, 8]))).toBe(4);
    expect(formTabs({ ...FORM, dated: true }, tabsRange([1, 2, 4, 8, 16, 32, 64]))).toBe(127);
    expect(formTabs({ ...FORM, dated: true }, tabsRange([1, 3, 9, 27, 81, 243, 729]))).toBe(18);
  });
});
