// Begins today's sitting, or goes on with the one that was left.
import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useLocation } from "wouter";
import type { BoxView, SittingView } from "../../app/views.ts";
import { api } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { KEYS } from "../data/queries.ts";
import { flush } from "../outbox/outbox.ts";

/** A sitting and the box it belongs to. */
export interface Seated {
  readonly box: BoxView;
  readonly view: SittingView;
}

/** Sits down: what this browser still holds is sent first, so the server knows how far we came. */
export function useBegin(box: BoxView) {
  const client = useQueryClient();
  const [, navigate] = useLocation();
  return useMutation({
    mutationFn: (newCards: number) => sitDown(newCards),
    onSuccess: (view) => {
      client.setQueryData<Seated>(KEYS.sitting, { box, view });
      navigate("/sitting");
    },
  });
}

/** The sitting under way: the one just begun here, or today's unfinished one; null if there is none. */
export const useSeated = () =>
  useQuery({
    queryKey: KEYS.sitting,
    queryFn: resume,
    staleTime: Number.POSITIVE_INFINITY,
    // A plan of thousands of cards is not compared with the last one at every answer.
    structuralSharing: false,
    refetchOnWindowFocus: false,
  });

async function resume(): Promise<Seated | null> {
  await flush();
  const { box, sitting } = await api.today();
  if (!box || !sitting || sitting.finished) return null;
  return { box, view: await sitDown(0) };
}

async function sitDown(newCards: number): Promise<SittingView> {
  await flush();
  return api.beginSitting({ id: newId(), newCards });
}
