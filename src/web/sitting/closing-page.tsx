// What a sitting came to, and what tomorrow will ask.
import { useQuery } from "@tanstack/react-query";
import { Link } from "wouter";
import { summarise } from "../../core/sitting/sitting.ts";
import { api } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { KeptHere } from "../outbox/kept-here.tsx";
import { flush } from "../outbox/outbox.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { about, count, counted, longDate } from "../words.ts";
import type { Desk } from "./use-desk.ts";
import { useKeys } from "./use-keys.ts";

/** The closing page; taking back is still possible here. */
export function ClosingPage({ desk, compartments }: { readonly desk: Desk; readonly compartments: number }) {
  const summary = summarise(desk.state, compartments);
  useKeys({ Backspace: desk.takeBack, u: desk.takeBack });
  const figures = [
    { name: "Moved up", value: summary.movedUp, hint: "one compartment" },
    { name: "Sent back", value: summary.sentBack, hint: "to compartment 1" },
    { name: "Kept", value: summary.kept, hint: "for the long term" },
    { name: "Introduced", value: summary.introduced, hint: "to compartment 1" },
  ];
  return (
    <div className="closing">
      <PageHeading title="Sitting finished">Sitting finished</PageHeading>
      <dl className="figures">
        {figures.map(({ name, value, hint }) => (
          <div key={name} className="figure">
            <dt>{name}</dt>
            <dd>
              {count(value)} <span className="hint">{hint}</span>
            </dd>
          </div>
        ))}
      </dl>
      <p className="lead">You answered for {about(summary.seconds / 60)}.</p>
      <Tomorrow after={desk.state.events.at(-1)?.id ?? ""} />
      <p className="row">
        <Link href="/" className="button big primary">
          Back to Today
        </Link>
        <button type="button" className="quiet" disabled={!desk.canTakeBack} onClick={desk.takeBack}>
          Take back
        </button>
        <KeptHere className="unsent" />
      </p>
    </div>
  );
}

function Tomorrow({ after }: { readonly after: string }) {
  const ahead = useQuery({
    queryKey: [...KEYS.ahead, after],
    queryFn: async () => {
      // The forecast counts the answers just given.
      await flush();
      return api.ahead();
    },
    retry: true,
    retryDelay: 2_000,
  });
  if (!ahead.data) return <p className="lead">Tomorrow's load is worked out as soon as Longhold answers.</p>;
  const { date, reviews, newCards, minutes } = ahead.data;
  return (
    <p className="lead">
      {longDate(date)} will ask about {counted(reviews, "card")}
      {newCards > 0 ? ` and bring ${count(newCards)} new` : ""}: {about(minutes)}.
    </p>
  );
}
