// What a person looks for among facts, as the store is asked.
import type { z } from "zod";
import type { Critic } from "../app/critique.ts";
import type { FactQuery } from "../app/ports.ts";
import { foldText } from "../core/text/fold-text.ts";
import type { factQuerySchema } from "./schemas.ts";

/** The words of a search, without accents and case, and what else is asked for. */
export async function factQueryOf(
  critic: Critic,
  { search = "", note, ...query }: z.infer<typeof factQuerySchema>,
): Promise<FactQuery> {
  const among = note && query.subject !== undefined ? await critic.factsWith(query.subject, note) : undefined;
  const words = foldText(search)
    .split(/\s+/u)
    .filter((word) => word !== "");
  return { ...query, words, among };
}
