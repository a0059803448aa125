// What pages ask the server for, with the keys under which answers are remembered.
import { QueryClient, useQuery, useQueryClient } from "@tanstack/react-query";
import { useCallback } from "react";
import type { TodayView } from "../../app/views.ts";
import { ApiError, api, isUnreachable } from "../client.ts";
import { flush, noteBox } from "../outbox/outbox.ts";

/** The memory of answers shared by all pages. */
export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      // The server may run on this very machine, so being offline means nothing.
      networkMode: "always",
      staleTime: 5_000,
      retry: (failures, error) => isUnreachable(error) && failures < 2,
      retryDelay: 800,
    },
    mutations: { networkMode: "always" },
  },
});

/** Keys of remembered answers. */
export const KEYS = {
  today: ["today"],
  plan: ["plan"],
  sitting: ["sitting"],
  ahead: ["ahead"],
  drawer: ["box"],
  boxCards: ["box", "cards"],
  card: ["card"],
  subjects: ["subjects"],
  facts: ["facts"],
  fact: ["fact"],
  edits: ["edits"],
  paper: ["paper"],
  kit: ["kit"],
  tags: ["tags"],
} as const;

/** The Today page's figures. */
export const useToday = () => useQuery({ queryKey: KEYS.today, queryFn: fetchToday });

/** Today as the server sees it once it has every answer given here. */
export async function fetchToday(): Promise<TodayView> {
  await flush();
  const today = await api.today();
  noteBox(today.box?.id ?? null);
  return today;
}

/** The box as it is, from which the Plan page works its loads out, once the server has every answer given here. */
export const usePlan = () =>
  useQuery({
    queryKey: KEYS.plan,
    queryFn: async () => {
      await flush();
      return api.plan();
    },
  });

/** All subjects. */
export const useSubjects = () =>
  useQuery({ queryKey: KEYS.subjects, queryFn: async () => (await api.subjects()).subjects });

/** The box from above; not asked for before a box is set up. */
export const useDrawer = (enabled = true) => useQuery({ queryKey: KEYS.drawer, queryFn: api.drawer, enabled });

/** Marks everything remembered as out of date, save a sitting under way. */
export function useRefresh(): () => Promise<void> {
  const client = useQueryClient();
  return useCallback(
    () => client.invalidateQueries({ predicate: (query) => query.queryKey[0] !== KEYS.sitting[0] }),
    [client],
  );
}

/** Forgets all that was remembered of another box; `today` is the new one's. */
export function startAfresh(client: QueryClient, today: TodayView): Promise<void> {
  client.removeQueries({ type: "inactive" });
  noteBox(today.box?.id ?? null);
  client.setQueryData(KEYS.today, today);
  return client.invalidateQueries({ refetchType: "none" });
}

/** What to tell the reader about an error. */
export function errorWords(error: unknown): string {
  if (isUnreachable(error)) return "Longhold is not answering. Check that it is running, then try again.";
  if (error instanceof ApiError) return error.message;
  return "Something went wrong in this page.";
}
