import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyLog, delivered } from "../../../tests/support/any-log.ts";
import type { BeginEntry, LogEntry } from "../log/entry.ts";
import { type SittingTally, tallyEntry, tallySittings } from "./sitting-tally.ts";

const beginOf = (id: string, day: number): BeginEntry => ({
  id,
  box: "box",
  at: 0,
  kind: "begin",
  date: "2026-03-14",
  day,
  newCards: 10,
  fresh: ["vega:forward"],
});

/** Any log with the beginnings of its sittings, where nothing is taken back twice. */
const anyWhole = anyLog.map((log) => {
  const days = new Map(
    log.flatMap((entry) => ("sitting" in entry && "day" in entry ? [[entry.sitting, entry.day]] : [])),
  );
  const gone = new Set<string>();
  const once = log.filter((entry) => {
    if (entry.kind !== "take-back") return true;
    const again = gone.has(entry.entry);
    gone.add(entry.entry);
    return !again;
  });
  return [...[...days].map(([id, day]) => beginOf(id, day)), ...once].sort((a, b) => (a.id < b.id ? -1 : 1));
});

/** Follows the log entry by entry, as it is written. */
function followed(log: readonly LogEntry[]): readonly SittingTally[] {
  const tallies = new Map<string, SittingTally>();
  for (const entry of log) {
    if (entry.kind === "begin") {
      const { id, date, day, newCards, fresh } = entry;
      tallies.set(id, { id, date, day, newCards, fresh, finished: false, asked: 0, touched: 0 });
    }
    const tally = "sitting" in entry ? tallies.get(entry.sitting) : undefined;
    if (tally) tallies.set(tally.id, tallyEntry(tally, entry));
  }
  return [...tallies.values()];
}

/** The log without take-backs and second visits of a card, after which a sitting is counted anew. */
function withoutCorrections(log: readonly LogEntry[]): readonly LogEntry[] {
  const visited = new Set<string>();
  return log.filter((entry) => {
    if (entry.kind === "take-back") return false;
    if (entry.kind !== "outcome" || entry.pass !== "visit") return true;
    const key = `${entry.sitting}/${entry.card}`;
    const again = visited.has(key);
    visited.add(key);
    return !again;
  });
}

describe("what a box remembers of its sittings", () => {
  it("is the same whether it is followed entry by entry or counted from the whole log", () => {
    fc.assert(
      fc.property(anyWhole, (log) => {
        const plain = withoutCorrections(log);
        expect(tallySittings(plain)).toEqual(followed(plain));
      }),
    );
  });

  it("does not depend on the order in which the entries are delivered", () => {
    fc.assert(
      fc.property(
        anyWhole.chain((log) => fc.tuple(fc.constant(log), delivered(log))),
        ([log, arrived]) => {
          expect(tallySittings(arrived)).toEqual(tallySittings(log));
        },
      ),
    );
  });

  it("counts visits that stand, and looks and introductions apart from them; the second pass is not counted", () => {
    fc.assert(
      fc.property(anyWhole, (log) => {
        const gone = new Set(log.flatMap((entry) => (entry.kind === "take-back" ? [entry.entry] : [])));
        for (const { id, asked, touched } of tallySittings(log)) {
          const own = log.filter((entry) => "sitting" in entry && entry.sitting === id && !gone.has(entry.id));
          const outcomes = own.flatMap((entry) => (entry.kind === "outcome" ? [entry.pass] : []));
          const visited = own.flatMap((entry) =>
            entry.kind === "outcome" && entry.pass === "visit" ? [entry.card] : [],
          );
          expect(asked).toBe(new Set(visited).size);
          const looks = own.filter((entry) => entry.kind === "look").length;
          expect(touched).toBe(looks + outcomes.filter((pass) => pass === "introduction").length);
        }
      }),
    );
  });
});

describe("a finished sitting", () => {
  const base = { box: "box", at: 0 };
  const begin = beginOf("1", 3);
  const look: LogEntry = { ...base, id: "2", kind: "look", card: "vega:forward", day: 3, sitting: "1" };
  const finish: LogEntry = { ...base, id: "3", kind: "finish", sitting: "1" };
  const takeBack: LogEntry = { ...base, id: "4", kind: "take-back", entry: "2" };

  it("is one whose newest entry is the finish", () => {
    expect(tallySittings([begin, look, finish])[0]).toMatchObject({ finished: true, touched: 1 });
    expect(tallySittings([begin, look])[0]).toMatchObject({ finished: false });
  });

  it("is opened again by taking something back", () => {
    expect(tallySittings([begin, look, finish, takeBack])[0]).toMatchObject({ finished: false, touched: 0 });
  });
});
