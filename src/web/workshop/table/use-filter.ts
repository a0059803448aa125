// What the table shows, as the address says: a view can be kept as a bookmark, and Back goes back.
import { useCallback, useMemo } from "react";
import { useSearchParams } from "wouter";
import { RULES, type Rule } from "../../../core/critique/note.ts";
import type { BulkOrder } from "../../client.ts";

/** Stands for every subject. */
export const ALL_SUBJECTS = "all";

/** What is looked for. Empty strings ask for nothing. */
export interface FactFilter {
  readonly subject: string;
  readonly search: string;
  readonly tag: string;
  /** "stock", "kept", "withdrawn", or "compartment" with a number behind it, such as "compartment 3". */
  readonly lies: string;
  /** A rule of the critique that has something to say. */
  readonly note: string;
}

const FIELDS = ["subject", "search", "tag", "lies", "note"] as const;

/** The filter and how to change it. */
export function useFilter(): readonly [FactFilter, (part: Partial<FactFilter>) => void] {
  const [params, setParams] = useSearchParams();
  const text = params.toString();
  const filter = useMemo((): FactFilter => {
    const now = new URLSearchParams(text);
    const [subject = "", search = "", tag = "", lies = "", note = ""] = FIELDS.map((name) => now.get(name) ?? "");
    return { subject, search, tag, lies, note: (RULES as readonly string[]).includes(note) ? note : "" };
  }, [text]);
  const change = useCallback(
    (part: Partial<FactFilter>) =>
      setParams(
        (before) => {
          const next = new URLSearchParams(before);
          for (const [name, value] of Object.entries(part)) value ? next.set(name, value) : next.delete(name);
          return next;
        },
        { replace: true },
      ),
    [setParams],
  );
  return [filter, change];
}

type Fitting = Extract<BulkOrder["chosen"], { fitting: unknown }>["fitting"] & { compartment?: number };

/** The filter as the server is asked. */
export function filterQuery({ subject, search, tag, lies, note }: FactFilter): Fitting {
  const [place, compartment] = lies.split(" ") as [Fitting["place"] | "", string?];
  return {
    ...(subject === ALL_SUBJECTS ? {} : { subject }),
    ...(search.trim() === "" ? {} : { search: search.trim() }),
    ...(tag.trim() === "" ? {} : { tag: tag.trim() }),
    ...(place ? { place } : {}),
    ...(note === "" ? {} : { note: note as Rule }),
    ...(compartment ? { compartment: Number(compartment) } : {}),
  };
}
