// The latest results from paper, which can be taken back until a card is asked or moved.
import { useMutation } from "@tanstack/react-query";
import type { PaperUndo } from "../../app/views.ts";
import type { LocalDate } from "../../core/calendar/local-date.ts";
import { api } from "../client.ts";
import { errorWords, useRefresh } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { counted, longDate } from "../words.ts";

/** Takes results back. */
export function useTakeBackPaper() {
  const refresh = useRefresh();
  const notify = useNotify();
  return useMutation({
    mutationFn: (sittings: readonly string[]) => api.takeBackPaper(sittings),
    onSuccess: async () => {
      await refresh();
      notify("The results are taken back.");
    },
    onError: (error) => notify(errorWords(error)),
  });
}

/** What was recorded last; nothing where it can no longer be taken back. */
export function PaperUndoPanel({ undo }: { readonly undo: PaperUndo | null }) {
  const takeBack = useTakeBackPaper();
  if (!undo) return null;
  return (
    <p className="paper-undo">
      <span>
        {daysRecorded(undo.dates)} recorded from paper, with {cardsIn(undo)}.
      </span>
      <BusyButton className="quiet" busy={takeBack.isPending} onClick={() => takeBack.mutate(undo.sittings)}>
        Take back
      </BusyButton>
    </p>
  );
}

function cardsIn({ asked, introduced }: PaperUndo): string {
  if (introduced === 0) return `${counted(asked, "card")} asked`;
  const fresh = counted(introduced, "new card");
  return asked === 0 ? fresh : `${counted(asked, "card")} asked and ${fresh}`;
}

function daysRecorded(dates: readonly LocalDate[]): string {
  const [first = "", ...more] = dates;
  if (more.length === 0) return `${longDate(first)} is`;
  return `${counted(dates.length, "day")} from ${longDate(first)} to ${longDate(more.at(-1) ?? first)} are`;
}
