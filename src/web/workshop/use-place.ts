// Which subject and which fact lie open, as the address says.
import { useCallback } from "react";
import { useLocation, useSearchParams } from "wouter";

/** What lies open in the workshop. `fact` is "new" for one being written. */
export interface WorkshopPlace {
  readonly subject: string | null;
  readonly fact: string | null;
}

/** The address of a place in the workshop. */
export function workshopAddress({ subject, fact }: WorkshopPlace): string {
  const search = new URLSearchParams();
  if (subject) search.set("subject", subject);
  if (fact) search.set("fact", fact);
  const text = search.toString();
  return text ? `/workshop?${text}` : "/workshop";
}

/** Reads the place and goes elsewhere. */
export function useWorkshopPlace(): WorkshopPlace & { readonly open: (place: WorkshopPlace) => void } {
  const [search] = useSearchParams();
  const [, navigate] = useLocation();
  const open = useCallback((place: WorkshopPlace) => navigate(workshopAddress(place)), [navigate]);
  return { subject: search.get("subject"), fact: search.get("fact"), open };
}
