// How many answers wait in this browser, and why, in words.
import { counted } from "../words.ts";
import type { OutboxState } from "./outbox.ts";

/** One sentence or two about everything that waits; empty if nothing does. */
export function keptWords({ waiting, held, unstored }: OutboxState): string {
  const going = waiting.length - held.size;
  const safe = unstored.size === 0 ? "kept here" : "kept only while this page stays open";
  const parts = [
    going > 0 ? `${counted(going, "answer")} ${safe} until Longhold takes ${going === 1 ? "it" : "them"}.` : "",
    held.size > 0 ? `${counted(held.size, "answer")} ${safe}: ${[...new Set(held.values())].join(" ")}` : "",
  ];
  return parts.filter((part) => part !== "").join(" ");
}
