import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyLog, delivered } from "../../../tests/support/any-log.ts";
import { inLogOrder, isCardEntry } from "./entry.ts";

describe("log order", () => {
  it("is the order of identities, each once, however the entries come", () => {
    fc.assert(
      fc.property(
        anyLog.chain((log) => fc.tuple(fc.constant(log), delivered(log))),
        ([log, arrived]) => {
          expect(inLogOrder(arrived)).toEqual(log);
        },
      ),
    );
  });

  it("lets the first of two entries with one identity stand", () => {
    expect(
      inLogOrder([
        { id: "b", n: 1 },
        { id: "a", n: 2 },
        { id: "b", n: 3 },
      ]),
    ).toEqual([
      { id: "a", n: 2 },
      { id: "b", n: 1 },
    ]);
  });
});

describe("an entry about a card", () => {
  it("is a look, an outcome, a move, a withdrawal or a bringing back", () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(anyLog, (log) => {
        for (const entry of log) {
          const about = ["look", "outcome", "move", "withdraw", "bring-back"].includes(entry.kind);
          expect(isCardEntry(entry)).toBe(about);
          kinds.add(entry.kind);
        }
      }),
    );
    expect(kinds.size).toBe(8);
  });
});
