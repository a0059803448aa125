import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDigit, MOST_CARD_NUMBER, parseCardNumber, printedNumber } from "./card-number.ts";

/** All rows of digits of one length. */
const rowsOf = (length: number): readonly string[] =>
  Array.from({ length: 10 ** length }, (_, n) => String(n).padStart(length, "0"));

const isSound = (digits: string): boolean => checkDigit(digits) === 0;

describe("the check digit", () => {
  it("is 4 for 572", () => {
    // Damm's worked example, as in the doctests of python-stdnum (stdnum/damm.py): 572 → 4, and 5724 is valid.
    expect(checkDigit("572")).toBe(4);
    expect(isSound("5724")).toBe(true);
  });

  it.each([1, 2, 3, 4, 5])("catches every single wrong digit of %i digits and their check digit", (length) => {
    let missed = 0;
    for (const row of rowsOf(length)) {
      const whole = `${row}${checkDigit(row)}`;
      for (let at = 0; at < whole.length; at++)
        for (let digit = 0; digit < 10; digit++) {
          const slip = `${whole.slice(0, at)}${digit}${whole.slice(at + 1)}`;
          if (slip !== whole && isSound(slip)) missed++;
        }
    }
    expect(missed).toBe(0);
  });

  it.each([1, 2, 3, 4, 5])("catches every swap of neighbours in %i digits and their check digit", (length) => {
    let missed = 0;
    for (const row of rowsOf(length)) {
      const whole = `${row}${checkDigit(row)}`;
      for (let at = 0; at + 1 < whole.length; at++) {
        const slip = whole.slice(0, at) + whole[at + 1] + whole[at] + whole.slice(at + 2);
        if (slip !== whole && isSound(slip)) missed++;
      }
    }
    expect(missed).toBe(0);
  });
});

describe("a printed number", () => {
  it("is read back, with a hyphen, a space or nothing before its check digit", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: MOST_CARD_NUMBER }), fc.constantFrom("-", " ", "", "–"), (number, mark) => {
        const typed = printedNumber(number).replace("-", mark);
        expect(parseCardNumber(typed)).toEqual({ ok: true, value: number });
      }),
    );
  });

  it("is refused when its check digit is another", () => {
    const other = (checkDigit("1042") + 1) % 10;
    expect(parseCardNumber(`1042-${other}`)).toMatchObject({ ok: false });
  });

  it.each(["", "7", "-7", "0-0", "00", "10x2-7", "1042-", "1042-77", "12345678901-2"])("“%s” is refused", (typed) => {
    expect(parseCardNumber(typed)).toMatchObject({ ok: false });
  });
});
