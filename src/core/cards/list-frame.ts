// How one item of a list is asked: with what stands before it, what stands behind it, or its place. The words round
// it are the list's own, so that a card is in one language only, and stand one below the other, so that it reads the
// same in any direction of writing.

/** What stands before and behind the item that is asked; each is complete with its line breaks. */
export interface ListFrame {
  readonly before: string;
  readonly after: string;
}

/** The frame of the item at `at` (from 0): `next` shows what it follows, `previous` what it precedes. */
export function listFrame(items: readonly string[], at: number, way: "next" | "previous" | "position"): ListFrame {
  switch (way) {
    case "next": {
      if (at === 0) return { before: "1. ", after: "" };
      const from = at - runLength(items, at, -1);
      return { before: `${from > 0 ? "… " : ""}${items.slice(from, at).join("\n")}\n`, after: "" };
    }
    case "previous": {
      const to = at + 1 + runLength(items, at, 1);
      return { before: "", after: `\n${items.slice(at + 1, to).join("\n")}${to < items.length ? " …" : ""}` };
    }
    case "position":
      return { before: `${at + 1} / ${items.length}\n`, after: "" };
  }
}

/** How many neighbours must be shown for the item at `at` to be the only one beside such neighbours. */
function runLength(items: readonly string[], at: number, step: -1 | 1): number {
  const most = step < 0 ? at : items.length - 1 - at;
  for (let length = 1; length < most; length++) {
    const alike = (other: number): boolean =>
      Array.from({ length }, (_, i) => (i + 1) * step).every((off) => items[other + off] === items[at + off]);
    if (!items.some((_, other) => other !== at && alike(other))) return length;
  }
  return most;
}
