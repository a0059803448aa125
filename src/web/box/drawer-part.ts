// The parts of the drawer, and which one is open according to the address.
import { useCallback } from "react";
import { useSearchParams } from "wouter";
import type { DrawerView } from "../../app/views.ts";
import { capital, pileName } from "../words.ts";

/** A part of the drawer that holds cards. */
export type Part =
  | { readonly kind: "stock" | "kept" | "withdrawn" }
  | { readonly kind: "compartment"; readonly compartment: number; readonly bundle: number };

/** A part in the address: "kept", "4.2". */
export const partKey = (part: Part): string =>
  part.kind === "compartment" ? `${part.compartment}.${part.bundle}` : part.kind;

const NAMES = { stock: "Stock", kept: "Kept shelf", withdrawn: "Withdrawn" } as const;

/** What a part is called. */
export function partTitle(part: Part, view: DrawerView): string {
  if (part.kind !== "compartment") return NAMES[part.kind];
  const bundles = view.compartments[part.compartment - 1]?.bundles.length ?? 1;
  return capital(pileName(part.compartment, part.bundle, bundles));
}

/** The open part and how to open another. */
export function useOpenPart(): readonly [Part | null, (part: Part) => void] {
  const [search, setSearch] = useSearchParams();
  const open = useCallback((part: Part) => setSearch({ at: partKey(part) }, { replace: true }), [setSearch]);
  return [parsePart(search.get("at")), open];
}

function parsePart(text: string | null): Part | null {
  if (text === "stock" || text === "kept" || text === "withdrawn") return { kind: text };
  const match = text?.match(/^(\d{1,2})\.(\d{1,6})$/);
  return match ? { kind: "compartment", compartment: Number(match[1]), bundle: Number(match[2]) } : null;
}
