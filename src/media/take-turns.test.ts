import { expect, it } from "vitest";
import { createTurns } from "./take-turns.ts";

it("never more than the given number run at once, in the order in which they came", async () => {
  const takeTurns = createTurns(2);
  let running = 0;
  let most = 0;
  const started: number[] = [];
  const work = (i: number) => async () => {
    started.push(i);
    most = Math.max(most, ++running);
    await new Promise((resolve) => setImmediate(resolve));
    running--;
    return i;
  };
  const results = await Promise.all([0, 1, 2, 3, 4, 5].map((i) => takeTurns(work(i))));
  expect(results).toEqual([0, 1, 2, 3, 4, 5]);
  expect(started).toEqual([0, 1, 2, 3, 4, 5]);
  expect(most).toBe(2);
});

it("work that fails gives its place back", async () => {
  const takeTurns = createTurns(1);
  await expect(takeTurns(() => Promise.reject(new Error("broken")))).rejects.toThrow("broken");
  expect(await takeTurns(async () => "next")).toBe("next");
});
