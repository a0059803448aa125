// One card at a time, with nothing else on the table.
import { useQueryClient } from "@tanstack/react-query";
import { useCallback, useEffect, useState } from "react";
import { Link } from "wouter";
import { KEYS } from "../data/queries.ts";
import type { Refusal } from "../outbox/outbox.ts";
import { useRefusals } from "../outbox/use-outbox.ts";
import { useNotify } from "../shell/notices.tsx";
import { PageHeading } from "../shell/page-heading.tsx";
import { ServerGone } from "../shell/server-gone.tsx";
import { Loaded } from "../shell/states.tsx";
import { ClosingPage } from "./closing-page.tsx";
import type { Seated } from "./seated.ts";
import { SittingTable } from "./sitting-table.tsx";
import { useSeated } from "./use-begin.ts";
import { useDesk } from "./use-desk.ts";

/** The page of today's sitting. */
export function SittingPage() {
  const seated = useSeated();
  const client = useQueryClient();
  const [fetched, setFetched] = useState(0);
  const { refetch } = seated;
  const reload = useCallback((): void => {
    void refetch().then(({ isSuccess }) => isSuccess && setFetched((times) => times + 1));
  }, [refetch]);
  // A refusal means that another window is ahead: the table is laid anew.
  const relay = useCallback(
    ({ entry }: Refusal) => {
      if ("sitting" in entry || entry.kind === "take-back") reload();
    },
    [reload],
  );
  useRefusals(relay);
  useEffect(() => {
    // Today is fetched anew when the reader comes back to it.
    client.removeQueries({ queryKey: KEYS.today });
    client.removeQueries({ queryKey: KEYS.drawer });
  }, [client]);
  return (
    <div className="sitting">
      <ServerGone />
      <Loaded query={seated} what="the sitting" heading="Sitting">
        {(found) =>
          found ? (
            <Sitting key={`${found.view.plan.sitting} ${fetched}`} seated={found} reload={reload} />
          ) : (
            <NoSitting />
          )
        }
      </Loaded>
    </div>
  );
}

function Sitting({ seated, reload }: { readonly seated: Seated; readonly reload: () => void }) {
  const notify = useNotify();
  const desk = useDesk(seated, notify);
  const card = desk.step.kind === "done" ? undefined : desk.step.card.card;
  return (
    <main className="sitting-root" data-step={desk.step.kind} data-card={card}>
      {desk.step.kind === "done" ? (
        <ClosingPage desk={desk} compartments={seated.view.compartments} />
      ) : (
        <SittingTable desk={desk} step={desk.step} chart={seated.box.chart} reload={reload} />
      )}
    </main>
  );
}

function NoSitting() {
  return (
    <main className="page narrow">
      <PageHeading title="No sitting">No sitting is under way</PageHeading>
      <p className="lead">Sittings begin on the Today page, where you see what is due.</p>
      <p>
        <Link href="/" className="button primary">
          Back to Today
        </Link>
      </p>
    </main>
  );
}
