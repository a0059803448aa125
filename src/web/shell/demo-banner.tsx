// Says that the box on the table is the demo, and clears it away.
import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useLocation } from "wouter";
import { api } from "../client.ts";
import { errorWords, startAfresh } from "../data/queries.ts";
import { BusyButton } from "./busy-button.tsx";
import { useConfirm } from "./confirm.tsx";
import { useNotify } from "./notices.tsx";

/** The banner shown over every page while the demo lies on the table. */
export function DemoBanner() {
  const client = useQueryClient();
  const confirm = useConfirm();
  const notify = useNotify();
  const [, navigate] = useLocation();
  const clear = useMutation({
    mutationFn: api.clearDemo,
    onSuccess: (today) => {
      navigate("/");
      notify("The demo is cleared away.");
      return startAfresh(client, today);
    },
    onError: (error) => notify(errorWords(error)),
  });
  const ask = async (): Promise<void> => {
    const yes = await confirm({
      title: "Clear the demo away?",
      body: "The demo's subject goes with everything in it, also what you added to it, and with its history. Subjects of your own stay, with their cards and answers.",
      yes: "Clear the demo away",
      careful: true,
    });
    if (yes) clear.mutate();
  };
  return (
    <aside className="demo-banner" aria-label="Demo">
      <p>This is the demo box of an invented observatory guide.</p>
      <BusyButton busy={clear.isPending} onClick={() => void ask()}>
        Clear the demo away
      </BusyButton>
    </aside>
  );
}
