// How the paper cards of a fact stand to what is saved of it.
import { useQuery } from "@tanstack/react-query";
import { Link } from "wouter";
import type { FactPaperView } from "../../app/print-versions.ts";
import { api } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { count, counted } from "../words.ts";

/** Nothing for a fact of which no card was ever recorded as printed. */
export function FactPaper({ fact }: { readonly fact: string }) {
  const paper = useQuery({ queryKey: [...KEYS.kit, "fact", fact], queryFn: () => api.factPaper(fact) });
  if (!paper.data) return null;
  const { total, again } = summed(paper.data.states);
  if (total === 0) return null;
  return (
    <p className="hint">
      {counted(total, "card")} on paper,{" "}
      {again === 0 ? "up to date." : <Link href="/kit">{`of which ${count(again)} to be printed again`}</Link>}
    </p>
  );
}

function summed({ current = 0, changed = 0, lost = 0, damaged = 0 }: FactPaperView["states"]) {
  const again = changed + lost + damaged;
  return { total: current + again, again };
}
