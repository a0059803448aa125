import { describe, expect, it } from "vitest";
import { boxMark, type SheetHead } from "../../kit/sheet-code.ts";
import type { Judgement } from "./judge-box.ts";
import { doubtLeftOut, type PageReading, type ReadBox } from "./read-page.ts";
import {
  addPage,
  answerDoubt,
  doubtsOf,
  EMPTY_DRAFT,
  missingPages,
  readingOf,
  type SheetDraft,
} from "./sheet-draft.ts";

const wanted = { box: "box", date: "2026-11-26" };

const head: SheetHead = {
  sheet: "0badcafe",
  box: boxMark("box"),
  date: "2026-11-26",
  day: 70,
  page: 1,
  pages: 1,
  size: { width: 210, height: 297 },
};

const box = (number: number | null, judgement: Judgement, part = 0): ReadBox => ({
  x: 0,
  y: 0,
  part,
  number,
  judgement,
});

const page = (boxes: readonly ReadBox[], more: Partial<SheetHead> = {}): PageReading => ({
  head: { ...head, ...more },
  boxes,
  toPhoto: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  residual: 0,
});

function draftOf(...pages: readonly PageReading[]): SheetDraft {
  return pages.reduce((draft, one) => {
    const added = addPage(draft, one, wanted);
    if (!added.ok) throw new Error(added.error.kind);
    return added.value;
  }, EMPTY_DRAFT);
}

describe("a sheet that is being read", () => {
  it("gives its results once every box is read", () => {
    const draft = draftOf(page([box(null, "empty"), box(1042, "ticked"), box(318, "empty")]));
    expect(readingOf(draft)).toEqual({
      sheet: "0badcafe",
      date: "2026-11-26",
      day: 70,
      missed: [1042],
      asked: [318, 1042],
    });
  });

  it("waits for the answer to every doubt", () => {
    const draft = draftOf(page([box(null, "empty"), box(1042, "doubtful"), box(318, "doubtful")]));
    const [first, second] = doubtsOf(draft).map(({ key }) => key) as [string, string];
    const one = answerDoubt(draft, first, true);
    expect(readingOf(one)).toBeNull();
    const both = answerDoubt(one, second, false);
    expect(readingOf(both)?.missed).toEqual([1042]);
    expect(readingOf(answerDoubt(both, first, null))).toBeNull();
  });

  it("waits for all its pages, in any order", () => {
    const first = page([box(null, "empty"), box(1, "ticked")], { pages: 2 });
    const second = page([box(null, "empty"), box(2, "empty")], { page: 2, pages: 2 });
    expect(missingPages(draftOf(second))).toEqual([1]);
    expect(readingOf(draftOf(second))).toBeNull();
    expect(readingOf(draftOf(second, first))).toMatchObject({ missed: [1], asked: [1, 2] });
  });

  it("takes a better photo of a page in the place of the first, and asks its doubts anew", () => {
    const draft = draftOf(page([box(null, "empty"), box(1, "doubtful")]));
    const answered = answerDoubt(draft, doubtsOf(draft)[0]?.key as string, true);
    const again = addPage(answered, page([box(null, "empty"), box(1, "doubtful")]), wanted);
    expect(again.ok && readingOf(again.value)).toBeNull();
  });

  it("leaves out the cards of a pile that was left out, and no others", () => {
    const boxes = [box(null, "ticked"), box(1, "empty"), box(null, "empty", 1), box(2, "ticked", 1)];
    expect(readingOf(draftOf(page(boxes)))).toMatchObject({ missed: [2], asked: [2] });
  });

  it("refuses the sheet of another box, of another day and of another printing", () => {
    const boxes = [box(null, "empty"), box(1, "ticked")];
    const refuse = (more: Partial<SheetHead>, draft = EMPTY_DRAFT) => addPage(draft, page(boxes, more), wanted);
    expect(refuse({ box: boxMark("another") })).toMatchObject({ error: { kind: "other-box" } });
    expect(refuse({ date: "2026-11-25" })).toEqual({
      ok: false,
      error: { kind: "other-day", date: "2026-11-25", wanted: "2026-11-26" },
    });
    const begun = draftOf(page(boxes, { pages: 2 }));
    expect(refuse({ sheet: "12345678", page: 2, pages: 2 }, begun)).toMatchObject({ error: { kind: "other-sheet" } });
  });

  it("takes a sheet of any day where none is asked for", () => {
    expect(addPage(EMPTY_DRAFT, page([]), { box: "box", date: null }).ok).toBe(true);
  });
});

describe("a pile that is said to be left out", () => {
  it("is in doubt if one of its cards is marked or in doubt", () => {
    for (const judgement of ["ticked", "doubtful"] as const) {
      const boxes = [box(null, "ticked"), box(1, judgement), box(2, "empty", 1)];
      expect(doubtLeftOut(boxes)[0]?.judgement).toBe("doubtful");
    }
    expect(doubtLeftOut([box(null, "ticked"), box(1, "empty"), box(2, "ticked", 1)])[0]?.judgement).toBe("ticked");
  });
});
