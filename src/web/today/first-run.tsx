// An empty table with three ways in.
import { useMutation, useQueryClient } from "@tanstack/react-query";
import { Link } from "wouter";
import { api } from "../client.ts";
import { startAfresh } from "../data/queries.ts";
import { EmptyRuler } from "../ruler/ruler.tsx";
import { BusyButton } from "../shell/busy-button.tsx";
import { PageHeading } from "../shell/page-heading.tsx";
import { Trouble } from "../shell/states.tsx";

/** The first page before there is anything to learn. */
export function FirstRun() {
  const client = useQueryClient();
  const demo = useMutation({
    mutationFn: api.fillDemo,
    onSuccess: (today) => startAfresh(client, today),
  });
  return (
    <>
      <PageHeading title="An empty table">An empty table</PageHeading>
      <p className="lead">
        Longhold keeps a card box: you write down what you want to know for good, and it shows you each card on the day
        it is due. Begin in one of three ways.
      </p>
      <ul className="ways">
        <li>
          <Link href="/workshop?fact=new" className="way">
            <strong>Write a first fact</strong>
            <span>A word and its meaning, a sentence with a gap, or a picture with a name.</span>
          </Link>
        </li>
        <li>
          <Link href="/workshop/import" className="way">
            <strong>Bring a list</strong>
            <span>Paste it or choose a file. You see the first cards before anything is saved.</span>
          </Link>
        </li>
        <li>
          <BusyButton className="way" busy={demo.isPending} onClick={() => demo.mutate()}>
            <strong>Look round the demo</strong>
            <span>
              {demo.isPending
                ? "Laying out the cards; this takes a few seconds."
                : "The box of a guide at a hilltop observatory, some weeks in."}
            </span>
          </BusyButton>
        </li>
      </ul>
      {demo.error ? <Trouble error={demo.error} retry={() => demo.mutate()} /> : null}
      <EmptyRuler />
      <p className="ruler-words">
        This is the ruler of your coming chart: one tick a day, and the longer the tick, the higher the compartment you
        visit.
      </p>
    </>
  );
}
