import { expect, test } from "vitest";
import type { WithdrawEntry } from "../../core/log/entry.ts";
import { withdrawalOf } from "./withdrawal.ts";

const withdraw = (id: string, reason: WithdrawEntry["reason"], takenBack = false) => ({
  id,
  box: "box",
  at: 0,
  kind: "withdraw" as const,
  card: "vega:forward",
  day: 3,
  reason,
  takenBack,
});

test("the last withdrawal that was not taken back says why a card is out", () => {
  expect(withdrawalOf({ entries: [withdraw("1", "hand"), withdraw("2", "fact")] })).toBe("fact");
  expect(withdrawalOf({ entries: [withdraw("1", "angle"), withdraw("2", "hand", true)] })).toBe("angle");
});
