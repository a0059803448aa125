// The piles of today and the one button that begins.
import { useState } from "react";
import { Link } from "wouter";
import type { BoxView, TodayView } from "../../app/views.ts";
import { kitAddress } from "../kit/kit-address.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Trouble } from "../shell/states.tsx";
import { Stepper } from "../shell/stepper.tsx";
import { useBegin } from "../sitting/use-begin.ts";
import { about, counted } from "../words.ts";
import { Piles } from "./piles.tsx";

const MOST_NEW = 1_000;

type Standing = "begin" | "go-on" | "finished" | "nothing";

function standing(view: TodayView): Standing {
  if (view.sitting && !view.sitting.finished) return "go-on";
  if (view.due > 0) return "begin";
  if (view.sitting) return "finished";
  return view.stock > 0 ? "begin" : "nothing";
}

/** What is due, for how long, and how to begin. */
export function SittingPanel({ view, box }: { readonly view: TodayView; readonly box: BoxView }) {
  const state = standing(view);
  const most = Math.min(view.stock, MOST_NEW);
  const proposed = state === "finished" ? Math.min(box.newPerDay || 10, most) : Math.min(view.newCards, most);
  const [fresh, setFresh] = useState(proposed);
  const begin = useBegin(box);
  const withoutNew = state === "finished" ? 0 : view.minutes - (view.newCards * view.pace.fresh) / 60;
  const minutes = state === "go-on" ? view.minutes : withoutNew + (fresh * view.pace.fresh) / 60;
  const start = (): void => begin.mutate(state === "go-on" ? view.newCards : fresh);
  return (
    <section className="sheet sitting-panel" aria-labelledby="piles">
      <h2 id="piles">{titles(view, state)}</h2>
      {view.restDay ? (
        <p className="lead">Today is a rest day. Nothing needs to be asked; what is due waits for you.</p>
      ) : null}
      {state === "nothing" ? <NothingDue facts={view.facts} /> : null}
      {view.piles.length > 0 ? <Piles piles={view.piles} chart={box.chart} /> : null}
      <div className="begin-side">
        {state === "begin" && most > 0 ? (
          <Stepper label="New cards in this sitting" value={fresh} max={most} onChange={setFresh} />
        ) : null}
        {state === "go-on" && view.newCards > 0 ? (
          <p>
            {view.due > 0 ? "And " : ""}
            {counted(view.newCards, "new card")} to introduce.
          </p>
        ) : null}
        {state === "finished" ? (
          <>
            <p className="lead">
              {doneToday(view)}The box rests until the next day. <Link href="/sitting">Look at the sitting again</Link>
            </p>
            {most > 0 ? <Stepper label="More new cards" value={fresh} max={most} min={1} onChange={setFresh} /> : null}
          </>
        ) : null}
        <p className="row">
          <Link href={kitAddress("sheet")}>Print today's sheet</Link>
          <Link href="/paper">Enter paper results</Link>
        </p>
        {state === "nothing" || (state === "finished" && most === 0) ? null : (
          <p className="begin-row">
            <BusyButton
              className={state === "finished" || view.restDay ? "big" : "big primary"}
              busy={begin.isPending || (state === "begin" && view.due + fresh === 0)}
              onClick={start}
            >
              {buttons[state]}
            </BusyButton>
            <span className="about">
              {about(minutes)}
              {view.paceMeasured && state !== "finished" && view.due > 0 ? ", at your own pace" : ""}
            </span>
          </p>
        )}
        {begin.error ? <Trouble error={begin.error} retry={start} /> : null}
      </div>
    </section>
  );
}

/** What was done today, as far as anything was. */
function doneToday({ sitting, introducedToday }: TodayView): string {
  const asked = sitting && sitting.asked > 0 ? `${counted(sitting.asked, "card")} asked` : "";
  const introduced = introducedToday > 0 ? `${counted(introducedToday, "new card")} introduced` : "";
  const parts = [asked, introduced].filter((part) => part !== "");
  return parts.length > 0 ? `${parts.join(", ")}. ` : "";
}

const buttons: Readonly<Record<Standing, string>> = {
  begin: "Begin sitting",
  "go-on": "Go on with the sitting",
  finished: "Introduce more new cards",
  nothing: "",
};

function titles(view: TodayView, state: Standing): string {
  switch (state) {
    case "begin":
      return view.due > 0
        ? `${counted(view.due, "card")} due, highest compartment first`
        : "No cards are due: time for new ones";
    case "go-on":
      return view.due > 0
        ? `A sitting is under way: ${counted(view.due, "card")} left in the piles`
        : "A sitting is under way";
    case "finished":
      return "Today's sitting is finished";
    case "nothing":
      return "Nothing is due today";
  }
}

function NothingDue({ facts }: { readonly facts: number }) {
  return (
    <p className="lead">
      {facts === 0 ? "The box holds no cards yet. " : "Every card waits for a later day, and the stock is empty. "}
      <Link href="/workshop">Write more facts in the workshop</Link> or{" "}
      <Link href="/workshop/import">bring a list</Link>.
    </p>
  );
}
