// Begins today's sitting, or goes on with the one that was left.
import { type QueryClient, useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useLocation } from "wouter";
import type { BoxView, SittingView } from "../../app/views.ts";
import { api, isUnreachable } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { fetchToday, KEYS } from "../data/queries.ts";
import { flush, unsent } from "../outbox/outbox.ts";
import { type Seated, withUnsent } from "./seated.ts";

/** Sits down: what this browser still holds is sent first, so the server knows how far we came. */
export function useBegin(box: BoxView) {
  const client = useQueryClient();
  const [, navigate] = useLocation();
  return useMutation({
    mutationFn: (newCards: number) => sitDown(newId(), newCards),
    onSuccess: (view) => {
      client.setQueryData<Seated>(KEYS.sitting, { box, view });
      navigate("/sitting");
    },
    onError: (error) => {
      // The sitting that lies here can be gone on with; its answers wait until they can be sent.
      if (isUnreachable(error) && heldSitting(client)) navigate("/sitting");
    },
  });
}

/** The sitting on the table: the one just begun here, or today's newest; null if there is none. */
export const useSeated = () =>
  useQuery({
    queryKey: KEYS.sitting,
    queryFn: resume,
    // Where there was none, one may have been begun since.
    staleTime: ({ state }) => (state.data ? Number.POSITIVE_INFINITY : 0),
    // A plan of thousands of cards is not compared with the last one at every answer.
    structuralSharing: false,
    refetchOnWindowFocus: false,
  });

/** An unfinished sitting that this page still holds, whatever the server does; null if there is none. */
export function heldSitting(client: QueryClient): Seated | null {
  const held = client.getQueryData<Seated | null>(KEYS.sitting) ?? null;
  return held?.view.finished ? null : held;
}

async function resume(): Promise<Seated | null> {
  const { box, sitting } = await fetchToday();
  // Asked for under its own identity, a finished sitting is shown again and no other is begun.
  return box && sitting ? { box, view: await sitDown(sitting.id, 0) } : null;
}

async function sitDown(id: string, newCards: number): Promise<SittingView> {
  await flush();
  return withUnsent(await api.beginSitting({ id, newCards }), unsent());
}
