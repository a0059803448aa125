// Which facts are ticked.
import { useCallback, useState } from "react";
import type { Fact } from "../../../core/facts/fact.ts";
import type { BulkOrder } from "../../client.ts";
import { type FactFilter, filterQuery } from "./use-filter.ts";

/** Some facts by name, or all that fit the filter. */
export interface Chosen {
  readonly all: boolean;
  readonly facts: ReadonlySet<string>;
  readonly toggle: (fact: string) => void;
  /** Ticks or unticks these. */
  readonly set: (facts: readonly Fact[], on: boolean) => void;
  readonly chooseAll: () => void;
  readonly clear: () => void;
}

const NONE: ReadonlySet<string> = new Set();

/** What is ticked; changing the filter (`view`) unticks everything, so that nothing unseen is changed. */
export function useChosen(view: string): Chosen {
  const [state, setState] = useState({ view, all: false, facts: NONE });
  const { all, facts } = state.view === view ? state : { all: false, facts: NONE };
  const put = useCallback(
    (change: (facts: Set<string>) => void) =>
      setState((before) => {
        const next = new Set(before.view === view ? before.facts : NONE);
        change(next);
        return { view, all: false, facts: next };
      }),
    [view],
  );
  return {
    all,
    facts,
    toggle: (fact) => put((next) => (next.has(fact) ? next.delete(fact) : next.add(fact))),
    set: (some, on) =>
      put((next) => {
        for (const { id } of some) on ? next.add(id) : next.delete(id);
      }),
    chooseAll: () => setState({ view, all: true, facts: NONE }),
    clear: () => setState({ view, all: false, facts: NONE }),
  };
}

/** What is ticked, as the server is told. */
export const chosenOf = (chosen: Chosen, filter: FactFilter): BulkOrder["chosen"] =>
  chosen.all ? { fitting: filterQuery(filter) } : { facts: [...chosen.facts] };
