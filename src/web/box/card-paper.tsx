// How the paper of a card stands to it, and saying that it is lost or damaged.
import { useMutation, useQuery } from "@tanstack/react-query";
import { Link } from "wouter";
import type { CardPaperView } from "../../app/print-versions.ts";
import { api, type MissingCards } from "../client.ts";
import { errorWords, KEYS, useRefresh } from "../data/queries.ts";
import { FaceChanges } from "../kit/your-paper/outdated-table.tsx";
import { useUndoPrintStep } from "../kit/your-paper/use-undo-print-step.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { yearDateOf } from "../words.ts";

interface CardPaperProps {
  readonly card: string;
  readonly number: number;
  readonly timeZone: string;
}

/** Nothing for a card of which no paper was ever recorded. */
export function CardPaper({ card, number, timeZone }: CardPaperProps) {
  const paper = useQuery({ queryKey: [...KEYS.kit, "card", card], queryFn: () => api.cardPaper(card) });
  const missing = useMissing(number);
  if (!paper.data || paper.data.printedAt === null) return null;
  const { state, printedAt, changes } = paper.data;
  return (
    <section className="card-paper" aria-label="Its paper">
      <p>
        On paper since {yearDateOf(printedAt, timeZone)}
        {WORDS[state]} {NEEDS_PRINTING.has(state) ? <Link href="/kit">Print it again</Link> : null}
      </p>
      {changes.length > 0 ? <FaceChanges changes={changes} /> : null}
      {state === "current" || state === "changed" ? (
        <p>
          {(["lost", "damaged"] as const).map((kind) => (
            <BusyButton
              key={kind}
              className="quiet"
              busy={missing.isPending}
              onClick={() => missing.mutate(kind)}
            >{`Its paper is ${kind}`}</BusyButton>
          ))}
        </p>
      ) : null}
    </section>
  );
}

const WORDS: Readonly<Record<CardPaperView["state"], string>> = {
  new: ".",
  current: ", and up to date.",
  changed: ", but the fact says something else by now:",
  lost: "; recorded as lost.",
  damaged: "; recorded as damaged.",
  withdrawn: "; take it out of the paper box, since it is not asked any more.",
};

const NEEDS_PRINTING: ReadonlySet<CardPaperView["state"]> = new Set(["changed", "lost", "damaged"]);

function useMissing(number: number) {
  const refresh = useRefresh();
  const notify = useNotify();
  const undo = useUndoPrintStep();
  return useMutation({
    mutationFn: (kind: MissingCards["kind"]) => api.cardsMissing({ kind, numbers: [number] }),
    onSuccess: async (step, kind) => {
      await refresh();
      notify(`Recorded: its paper is ${kind}.`, () => undo.mutate(step.id));
    },
    onError: (error) => notify(errorWords(error)),
  });
}
