import { describe, expect, it } from "vitest";
import { decimal, recallFrom, wholeNumber, wholeNumbers } from "./options.ts";
import type { Call } from "./verb.ts";

const call = (values: Call["values"]): Call => ({
  values,
  positionals: [],
  usage: (message) => new Error(message),
  out: () => undefined,
});

describe("a whole number", () => {
  const days = (text?: string) =>
    wholeNumber(call(text === undefined ? {} : { days: text }), "days", { least: 1, most: 64 });

  it("is taken within its limits, and nothing is made up where it is not given", () => {
    expect([days("1"), days("64"), days("007"), days()]).toEqual([1, 64, 7, undefined]);
  });

  it.each(["0", "65", "-1", "1.5", "1e1", "0x7", " 7", "", "seven"])(
    "is not %j; the words say what is allowed",
    (text) => {
      expect(() => days(text)).toThrow(`--days takes a whole number from 1 to 64, not “${text}”`);
    },
  );
});

describe("a list of whole numbers", () => {
  it("has commas between, and spaces if one likes", () => {
    expect(wholeNumbers(call({ periods: "1, 2,4" }), "periods")).toEqual([1, 2, 4]);
    expect(wholeNumbers(call({}), "periods")).toBeUndefined();
  });

  it.each(["", "1,", "1,x", "1;2", "-1"])("is not %j", (text) => {
    expect(() => wholeNumbers(call({ periods: text }), "periods")).toThrow("--periods takes whole numbers");
  });
});

describe("the chances of recall", () => {
  const recall = (text: string, above0 = false) => recallFrom(call({ recall: text }), 3, { above0 });

  it("are one for all, one for each, or nine in ten if nothing is said", () => {
    expect(recall("0.8")).toEqual([0.8, 0.8, 0.8]);
    expect(recall(" .5, 1,0")).toEqual([0.5, 1, 0]);
    expect(recallFrom(call({}), 2)).toEqual([0.9, 0.9]);
  });

  it("may be 0 only where that makes sense", () => {
    expect(recall("0")).toEqual([0, 0, 0]);
    expect(() => recall("0", true)).toThrow("--recall takes chances above 0 and at most 1, not “0”");
  });

  it.each(["1.1", "-0.1", "90%", "", "0.9,,0.9", "1e-1"])("are not %j", (text) => {
    expect(() => recall(text)).toThrow("--recall takes chances from 0 to 1");
  });

  it("are as many as there are compartments", () => {
    expect(() => recall("0.9,0.8")).toThrow("--recall needs one number, or 3, one for each compartment, not 2");
  });
});

it("a decimal is digits with at most one point", () => {
  expect(["8", "0.9", ".9", "8."].map(decimal)).toEqual([8, 0.9, 0.9, 8]);
  for (const text of ["", ".", "-8", "1e3", "8,5", "Infinity", " 8"]) expect(decimal(text)).toBeNaN();
});
