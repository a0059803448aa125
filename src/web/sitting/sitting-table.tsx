// The table during a sitting: pile and progress above, the card in the middle, the buttons below.
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { Link } from "wouter";
import type { Card } from "../../core/cards/cards.ts";
import type { Chart } from "../../core/chart/chart.ts";
import type { Answer } from "../../core/log/entry.ts";
import { AnswerFace, PromptFace } from "../cards/card-face.tsx";
import { CompartmentTab } from "../cards/compartment-tab.tsx";
import { SpeakButton } from "../cards/speak-button.tsx";
import { KeptHere } from "../outbox/kept-here.tsx";
import { PageHeading } from "../shell/page-heading.tsx";
import { Waiting } from "../shell/states.tsx";
import { progressOf } from "./progress.ts";
import { type Side, SittingButtons } from "./sitting-buttons.tsx";
import { SpellingSteps, SpellingTry, spellingVerdict, VERDICT_ID } from "./spelling-try.tsx";
import { type CardStep, stepHint, stepTitle } from "./step-words.ts";
import { useCardContents, usePicturesAhead } from "./use-card-contents.ts";
import type { Desk } from "./use-desk.ts";

const MOST_SECONDS = 600;

interface TableProps {
  readonly desk: Desk;
  readonly step: CardStep;
  readonly chart: Chart;
  readonly reload: () => void;
}

/** One step of a sitting, until there is none left. */
export function SittingTable({ desk, step, chart, reload }: TableProps) {
  const id = step.card.card;
  const ids = usePlanIds(desk, id);
  const { cards, gone } = useCardContents(ids);
  usePicturesAhead(ids, id, cards);
  // A card asked again in the same pile is a new asking.
  const asking = `${step.kind} ${id} ${desk.state.events.length}`;
  const [turnedAt, setTurnedAt] = useState("");
  const card = cards.get(id);
  const seconds = useSeconds(asking, card !== undefined);
  const side: Side = step.kind === "look" ? "both" : turnedAt === asking ? "answer" : "prompt";
  const turn = useCallback(() => setTurnedAt(asking), [asking]);
  const answer = (given: Answer): void => desk.answer(given, seconds());
  const [written, setWritten] = useState({ asking: "", typed: "" });
  const typed = written.asking === asking ? written.typed : "";
  const spelling = card?.spelling && side !== "both" ? card : null;
  const verdict = side === "answer" ? spellingVerdict(card, typed) : null;
  return (
    <>
      <TableHead desk={desk} step={step} chart={chart} />
      <CardPlace key={asking} card={card} side={side} gone={gone.has(id)} reload={reload} />
      {card ? (
        <p className="hear-row">
          <SpeakButton
            side={side === "prompt" ? card.prompt : card.answer}
            language={card.language}
            label={side === "prompt" ? "Hear the prompt" : "Hear the answer"}
          />
        </p>
      ) : null}
      {spelling && side === "prompt" ? (
        <SpellingTry
          key={asking}
          card={spelling}
          typed={typed}
          set={(text) => setWritten({ asking, typed: text })}
          turn={turn}
        />
      ) : null}
      {/* There before it is filled, or it would not be read out. */}
      {spelling ? <div role="status">{side === "answer" ? <SpellingSteps verdict={verdict} /> : null}</div> : null}
      <SittingButtons
        side={side}
        ready={card !== undefined}
        turn={turn}
        answer={answer}
        desk={desk}
        verdict={verdict ? VERDICT_ID : undefined}
        right={verdict?.distance === 0}
      />
    </>
  );
}

function TableHead({ desk, step, chart }: Omit<TableProps, "reload">) {
  const { done, total } = useMemo(() => progressOf(desk.state), [desk.state]);
  const first = !desk.state.events.some((event) => event.kind === "outcome");
  return (
    <header className="sitting-head">
      <div className="sitting-bar">
        <Link href="/" className="button quiet">
          Pause
        </Link>
        <progress max={total} value={done} aria-label={`${done} of ${total} steps done`} />
        <span className="sitting-done" aria-hidden="true">
          {done} of {total} steps
        </span>
        <KeptHere className="unsent" />
      </div>
      <PageHeading title="Sitting">
        {step.kind === "visit" ? (
          <CompartmentTab compartment={step.compartment} compartments={chart.compartments.length} />
        ) : null}
        {stepTitle(step, chart)}
      </PageHeading>
      <p className="sitting-hint">{stepHint(step, first)}</p>
    </header>
  );
}

function CardPlace(props: {
  readonly card: Card | undefined;
  readonly side: Side;
  readonly gone: boolean;
  readonly reload: () => void;
}) {
  const { card, side, gone, reload } = props;
  const place = useRef<HTMLElement>(null);
  const shown = card !== undefined;
  useEffect(() => {
    // Whoever listens to the page hears the side that is up.
    if (shown && side) place.current?.focus({ preventScroll: true });
  }, [side, shown]);
  return (
    <section ref={place} tabIndex={-1} className="card-place" data-side={side} aria-label="The card">
      {card ? <Sides card={card} side={side} /> : null}
      {!card && gone ? (
        <div className="trouble" role="alert">
          <p>This card's fact was deleted meanwhile.</p>
          <button type="button" onClick={reload}>
            Go on without it
          </button>
        </div>
      ) : null}
      {!card && !gone ? <Waiting what="the card" /> : null}
    </section>
  );
}

function Sides({ card, side }: { readonly card: Card; readonly side: Side }) {
  if (side === "prompt") return <PromptFace card={card} />;
  if (side === "answer") return <AnswerFace card={card} turning />;
  return (
    <>
      <PromptFace card={card} />
      <AnswerFace card={card} />
    </>
  );
}

/** The plan's cards in the order in which they come, those still ahead first; fixed for the sitting. */
function usePlanIds(desk: Desk, current: string): readonly string[] {
  const [start] = useState(current);
  const { plan } = desk.state;
  return useMemo(() => {
    const all = [...plan.piles.flatMap((pile) => pile.cards), ...plan.newCards].map((ref) => ref.card);
    const at = Math.max(0, all.indexOf(start));
    return [...all.slice(at), ...all.slice(0, at)];
  }, [plan, start]);
}

/** Reads how long the prompt has been up. */
function useSeconds(asking: string, shown: boolean): () => number {
  const since = useRef(0);
  useEffect(() => {
    if (asking && shown) since.current = performance.now();
  }, [asking, shown]);
  return () => Math.min(MOST_SECONDS, Math.round((performance.now() - since.current) / 100) / 10);
}
