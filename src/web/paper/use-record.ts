// Days on paper: what recording them would do, and recording them.
import { keepPreviousData, useMutation, useQuery } from "@tanstack/react-query";
import { useRef } from "react";
import type { PaperOutcome } from "../../app/views.ts";
import { api } from "../client.ts";
import { KEYS, useRefresh } from "../data/queries.ts";
import { useDebounced } from "../data/use-debounced.ts";
import { useNotify } from "../shell/notices.tsx";
import { counted, longDate } from "../words.ts";
import type { PaperOrder } from "./filled-day.ts";
import { useTakeBackPaper } from "./undo-panel.tsx";

const TYPING_MS = 350;

/** Previews `days` whenever they are sound and stand still, and records them as one step; `onRecorded` is called after it. */
export function useRecord(days: readonly PaperOrder[], isSound: boolean, onRecorded: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  const takeBack = useTakeBackPaper();
  const sound = isSound && days.length > 0;
  const wanted = JSON.stringify(sound ? days : []);
  const settled = useDebounced(wanted, TYPING_MS);
  const asked = JSON.parse(settled) as PaperOrder[];
  const record = useMutation({
    mutationFn: () => api.enterPaper([...days]),
    onSuccess: async ({ outcomes }) => {
      onRecorded();
      await refresh();
      notify(`Recorded: ${recordedWords(outcomes)}.`, () => takeBack.mutate(outcomes.map(({ sitting }) => sitting)));
    },
    // Another window may have recorded the day: what is left of it comes.
    onError: refresh,
  });
  const isStill = sound && settled === wanted && !record.isPending;
  const preview = useQuery({
    queryKey: [...KEYS.paper, "preview", settled],
    queryFn: async () => (await api.previewPaper(asked)).outcomes,
    // What has just been recorded cannot be recorded again, and must not be asked for when all else is asked for anew.
    enabled: isStill,
    placeholderData: keepPreviousData,
    retry: false,
  });
  // Two clicks can come before the page has seen the first.
  const isSending = useRef(false);
  const send = (): void => {
    if (!ready || isSending.current) return;
    isSending.current = true;
    record.mutate(undefined, {
      onSettled: () => {
        isSending.current = false;
      },
    });
  };
  const ready = isStill && preview.isSuccess && !preview.isPlaceholderData;
  const outcomes = sound ? (preview.data ?? []) : [];
  return {
    record: { send, error: record.error, forget: record.reset },
    preview: { outcomes, error: isStill ? preview.error : null, ready },
  };
}

const recordedWords = (outcomes: readonly PaperOutcome[]): string => {
  const [only, ...more] = outcomes;
  return only && more.length === 0 ? longDate(only.date) : counted(outcomes.length, "day");
};
