// What a person looks for among facts, as the store is asked.
import type { z } from "zod";
import type { FactQuery } from "../app/ports.ts";
import { foldText } from "../core/text/fold-text.ts";
import type { factQuerySchema } from "./schemas.ts";

/** The words of a search, without accents and case, and what else is asked for. */
export function factQueryOf({ search = "", ...query }: z.infer<typeof factQuerySchema>): FactQuery {
  const words = foldText(search)
    .split(/\s+/u)
    .filter((word) => word !== "");
  return { ...query, words };
}
