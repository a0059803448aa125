import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { printedNumber } from "../cards/card-number.ts";
import { mended, parseMissed, parseNumbers } from "./missed-numbers.ts";

const DUE = new Set([7, 42, 318, 572, 1042]);
const typed = (...numbers: number[]): string[] => numbers.map(printedNumber);

describe("numbers of missed cards", () => {
  it.each([
    [typed(1042, 318).join(", "), [1042, 318]],
    [typed(1042, 318).join(" "), [1042, 318]],
    // As Arabic, Chinese and Japanese keyboards have them.
    [typed(1042, 318, 7, 42).join("،").replace("،", "、"), [1042, 318, 7, 42]],
    [typed(1042, 318, 7).join("，").replace("，", "；"), [1042, 318, 7]],
    [typed(1042, 318).join("\n").replaceAll("-", " - "), [1042, 318]],
    [typed(42, 7, 42).join(";").replaceAll("-", ""), [42, 7]],
    ["", []],
    [" , ; \n", []],
  ])("%j", (text, numbers) => expect(parseMissed(text, DUE)).toEqual({ numbers, problems: [] }));

  it("names each that is wrong, and the due cards for which it may stand", () => {
    // Damm's worked example: 572 has the check digit 4.
    const { numbers, problems } = parseMissed("527-4, 318-x, 572-4", DUE);
    expect(numbers).toEqual([572]);
    expect(problems).toMatchObject([
      { typed: "527-4", near: [572] },
      { typed: "318-x", near: [318] },
    ]);
  });

  it("puts a due card in the place of a wrong number and of nothing else, though the same figures stand before it", () => {
    const [right = ""] = typed(1042);
    const wrong = right.slice(2);
    const text = `${right}, ${wrong}`;
    const [problem] = parseMissed(text, DUE).problems;
    expect(problem).toMatchObject({ typed: wrong, near: [42] });
    expect(mended(text, problem ?? { typed: "", at: 0 }, 42)).toBe(typed(1042, 42).join(", "));
  });

  it("says of a card that was not due that it was not", () => {
    expect(parseMissed(printedNumber(43), DUE).problems).toMatchObject([
      { reason: `${printedNumber(43)} was not due on this day` },
    ]);
  });

  it("takes back every number that is printed, whatever stands between", () => {
    const number = fc.integer({ min: 1, max: 99_999 });
    const between = fc.constantFrom(", ", "\n", "; ", "  ", ",");
    fc.assert(
      fc.property(fc.uniqueArray(number), between, (all, separator) => {
        const text = all.map(printedNumber).join(separator);
        expect(parseMissed(text, new Set(all))).toEqual({ numbers: all, problems: [] });
      }),
    );
  });

  it("lets no single wrong digit and no swap of neighbours pass for another card", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 10, max: 9_999 }), { minLength: 2 }),
        fc.nat(),
        fc.integer({ min: 1, max: 9 }),
        (all, at, by) => {
          const right = printedNumber(all[0] ?? 10).replace("-", "");
          const i = at % right.length;
          const wrong = right.slice(0, i) + ((Number(right[i]) + by) % 10) + right.slice(i + 1);
          expect(parseMissed(wrong, new Set(all)).numbers).toEqual([]);
        },
      ),
    );
  });
});

describe("numbers of cards that are lost or damaged", () => {
  it("are each checked by their last digit, whether or not they are due", () => {
    const { numbers, problems } = parseNumbers(`${printedNumber(43)}, 527-4; ${printedNumber(43)} ${printedNumber(7)}`);
    expect(numbers).toEqual([43, 7]);
    expect(problems).toEqual([{ typed: "527-4", at: 6, reason: expect.stringContaining("does not agree") }]);
  });
});
