// What the critique says of the fact that is being written: its own words at once, the others' from the server.
import { useMutation, useQuery } from "@tanstack/react-query";
import { useMemo, useState } from "react";
import { critiqueFact } from "../../../core/critique/critique-fact.ts";
import type { Note } from "../../../core/critique/note.ts";
import type { Fact } from "../../../core/facts/fact.ts";
import { api } from "../../client.ts";
import { errorWords, KEYS, useRefresh } from "../../data/queries.ts";
import { useNotify } from "../../shell/notices.tsx";

/** Notes that stand, and what can be done about them. */
export interface Notes {
  readonly notes: readonly Note[];
  /** How many were waved off of those that would be shown. */
  readonly hidden: number;
  readonly waveOff: (note: Note) => void;
  readonly bringBack: () => void;
}

const NONE: readonly string[] = [];

/** Notes about a draft; `before` is what is saved of it. A note about a fact that was never saved is waved off for now. */
export function useNotes(draft: Fact | null, before: Fact | null): Notes {
  const refresh = useRefresh();
  const notify = useNotify();
  const [here, setHere] = useState(NONE);
  const saved = useQuery({
    queryKey: [...KEYS.fact, before?.id ?? "", "notes"],
    queryFn: () => api.factNotes(before?.id ?? ""),
    enabled: before !== null,
  });
  const waved = new Set([...(saved.data?.wavedOff ?? NONE), ...here]);
  const own = useMemo(() => (draft ? critiqueFact(draft) : []), [draft]);
  const unchanged = useMemo(() => draft !== null && before !== null && sameWords(draft, before), [draft, before]);
  // What others have to do with it is known of what is saved only.
  const all = unchanged ? [...own, ...(saved.data?.among ?? [])] : own;
  const keep = useMutation({
    mutationFn: ({ keys, off }: { readonly keys: readonly string[]; readonly off: boolean }) =>
      off ? api.waveOffNotes(keys) : api.bringBackNotes(keys),
    onSuccess: refresh,
    onError: (error) => notify(errorWords(error)),
  });
  return {
    notes: all.filter((note) => !waved.has(note.key)),
    hidden: all.filter((note) => waved.has(note.key)).length,
    waveOff: (note) => {
      setHere((keys) => [...keys, note.key]);
      if (before) keep.mutate({ keys: [note.key], off: true });
    },
    bringBack: () => {
      const keys = all.filter((note) => waved.has(note.key)).map((note) => note.key);
      setHere(NONE);
      if (before && keys.length > 0) keep.mutate({ keys, off: false });
    },
  };
}

const sameWords = (one: Fact, other: Fact): boolean => JSON.stringify(sorted(one)) === JSON.stringify(sorted(other));

const sorted = (fact: Fact): readonly (readonly [string, unknown])[] =>
  Object.entries(fact).sort(([a], [b]) => (a < b ? -1 : 1));
