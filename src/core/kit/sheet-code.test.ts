import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  boxMark,
  bytesOf,
  cornerCodes,
  joinCodes,
  MOST_BYTES,
  parseCornerCode,
  type SheetHead,
  type SheetPart,
  sheetMark,
} from "./sheet-code.ts";

const head: SheetHead = {
  sheet: "0badcafe",
  box: boxMark("box"),
  date: "2026-11-26",
  day: 70,
  page: 2,
  pages: 3,
  size: { width: 215.9, height: 279.4 },
};

const anyPart: fc.Arbitrary<SheetPart> = fc
  .uniqueArray(fc.integer({ min: 1, max: 999_999_999 }), { minLength: 1, maxLength: 20 })
  .map((numbers) => numbers.toSorted((a, b) => a - b));

const anyParts = fc.array(anyPart, { minLength: 1, maxLength: 4 }).filter((parts) => bytesOf(parts) <= MOST_BYTES);

const parsed = (texts: readonly string[]) =>
  texts.map((text) => {
    const code = parseCornerCode(text);
    if (!code.ok) throw new Error(code.error);
    return code.value;
  });

describe("the corner codes of a page", () => {
  it("say which page of which sheet it is, each with its corner", () => {
    const codes = parsed(cornerCodes(head, [[1042, 1043]]));
    expect(codes.map((code) => code.corner)).toEqual([0, 1, 2, 3]);
    for (const code of codes) expect(code.head).toEqual(head);
  });

  it("give all numbers back from any three of them, and from four", () => {
    fc.assert(
      fc.property(anyParts, fc.integer({ min: 0, max: 4 }), (parts, lost) => {
        const codes = parsed(cornerCodes(head, parts)).filter(({ corner }) => corner !== lost);
        expect(joinCodes(codes)).toEqual(parts);
      }),
    );
  });

  it("give nothing from two", () => {
    const codes = parsed(cornerCodes(head, [[1042, 1043]]));
    expect(joinCodes(codes.slice(0, 2))).toBeNull();
    expect(joinCodes([...codes.slice(0, 2), codes[0] as never])).toBeNull();
  });

  it("give nothing when one of them is from another sheet or page, or was changed", () => {
    const codes = parsed(cornerCodes(head, [[1042, 1043]]));
    const [other] = parsed(cornerCodes({ ...head, page: 1 }, [[1042, 1043]]));
    expect(joinCodes([other as never, ...codes.slice(1)])).toBeNull();
    const [first, ...rest] = codes;
    const share = first?.share.map((byte, i) => (i === 1 ? byte ^ 1 : byte));
    expect(joinCodes([{ ...first, share } as never, ...rest])).toBeNull();
  });

  it("hold only what a QR code of version 5 packs two in eleven bits", () => {
    // ISO/IEC 18004, table 7 (from memory): version 5, level M, 122 alphanumeric characters.
    const numbers = Array.from({ length: MOST_BYTES - 3 }, (_, i) => i + 1);
    expect(bytesOf([numbers])).toBeGreaterThan(MOST_BYTES - 3);
    for (const text of cornerCodes(head, [numbers])) {
      expect(text).toMatch(/^[0-9A-Z $%*+./:-]+$/);
      expect(text.length).toBeLessThanOrEqual(122);
    }
  });

  it("are told from other codes and from codes of another layout", () => {
    expect(parseCornerCode("1042-9")).toEqual({ ok: false, error: "foreign" });
    expect(parseCornerCode("LH1 not base 45!")).toEqual({ ok: false, error: "foreign" });
    expect(parseCornerCode("LH2ABC")).toEqual({ ok: false, error: "newer" });
  });

  it("are refused if they claim a page as large as a wall", () => {
    const [text] = cornerCodes({ ...head, size: { width: 6000, height: 6000 } }, [[1042]]);
    expect(parseCornerCode(text ?? "")).toEqual({ ok: false, error: "foreign" });
  });

  it("of anything never throw", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
        const text = `LH1${[...bytes].map((byte) => "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"[byte % 45]).join("")}`;
        expect(typeof parseCornerCode(text).ok).toBe("boolean");
      }),
    );
  });
});

describe("the mark of a sheet", () => {
  it("is another for another box, date, day and other numbers", () => {
    const from = { box: "a", date: "2026-11-26", day: 7 };
    const marks = [
      sheetMark(from, [[1, 2]]),
      sheetMark({ ...from, box: "b" }, [[1, 2]]),
      sheetMark({ ...from, date: "2026-11-27" }, [[1, 2]]),
      sheetMark({ ...from, day: 8 }, [[1, 2]]),
      sheetMark(from, [[1], [2]]),
      sheetMark(from, [[1, 3]]),
    ];
    expect(new Set(marks).size).toBe(marks.length);
  });
});
