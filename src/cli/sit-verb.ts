// longhold sit: today's sitting in a terminal, with the same state machine as the pages.
import { createInterface } from "node:readline";
import { readCards } from "../app/box-view.ts";
import { idSeries } from "../app/entry-ids.ts";
import { FailureError } from "../app/failure.ts";
import type { Context } from "../app/ports.ts";
import { recordEntries, type SentEntry } from "../app/record.ts";
import { beginSitting, lookAhead } from "../app/sit.ts";
import { todayView } from "../app/today.ts";
import type { BoxView, SittingView } from "../app/views.ts";
import { type Card, type CardSide, sideText } from "../core/cards/cards.ts";
import type { Answer } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import {
  applyEvent,
  askedAs,
  lastEvent,
  nextStep,
  replaySitting,
  type SittingEvent,
  type SittingState,
  type Step,
  summarise,
  withoutEvent,
} from "../core/sitting/sitting.ts";
import { wholeNumber } from "./options.ts";
import { type Call, DATA_OPTION, type Verb, writing } from "./verb.ts";

/** Sits down in the terminal. */
export const sitVerb: Verb = {
  name: "sit",
  about: "practise in the terminal: today's piles, new cards, second pass",
  options: { new: { type: "string", about: "how many new cards (as the box says)" }, data: DATA_OPTION },
  async run(call) {
    await writing(call, (context) => sit(call, context));
    return 0;
  },
};

type Ask = (question: string) => Promise<string | null>;

async function sit(call: Call, context: Context): Promise<void> {
  const today = await todayView(context, Intl.DateTimeFormat().resolvedOptions().timeZone);
  if (!today.box)
    throw new FailureError("not-found", "No box is set up yet. longhold serve opens the pages; set it up there.");
  const ids = idSeries(context, today.lastEntry ?? undefined);
  const view = await beginSitting(context, ids(), wholeNumber(call, "new", { least: 0, most: 999 }) ?? today.newCards);
  const desk = new TerminalDesk(context, today.box, view, ids, call);
  const lines = createInterface({ input: process.stdin });
  const answers = lines[Symbol.asyncIterator]();
  const ask: Ask = async (question) => {
    call.out(question);
    const { done, value } = await answers.next();
    return done ? null : value.trim().toLowerCase();
  };
  const finished = await desk.work(ask);
  lines.close();
  call.out(
    finished
      ? await closingWords(context, desk.state, view)
      : "\nPaused. Nothing is lost; longhold sit goes on from here.\n",
  );
}

/** The sitting on the terminal's table. */
class TerminalDesk {
  state: SittingState;

  constructor(
    private readonly context: Context,
    private readonly box: BoxView,
    private readonly view: SittingView,
    private readonly nextId: () => EntryId,
    private readonly call: Call,
  ) {
    this.state = replaySitting(view.plan, view.events);
  }

  /** Goes on until the closing page (true) or until the person stops (false). */
  async work(ask: Ask): Promise<boolean> {
    for (let step = nextStep(this.state); step.kind !== "done"; step = nextStep(this.state)) {
      if (!(await this.show(step, ask))) return false;
    }
    await this.send({ ...this.stamp(), kind: "finish", sitting: this.view.plan.sitting });
    return true;
  }

  private async show(step: Exclude<Step, { kind: "done" }>, ask: Ask): Promise<boolean> {
    const [card] = await readCards(this.context, [step.card.card]);
    if (!card) throw new FailureError("not-found", "A card of this sitting is gone. Begin again.");
    this.call.out(`\n${title(step)} (${step.left} left)\n  ${sideWords(card.prompt)}\n`);
    if (step.kind === "look") {
      this.call.out(`  = ${answerText(card)}\n`);
      const seen = await ask("Enter: seen, b: take back, q: pause > ");
      if (seen === null || seen === "q") return false;
      if (seen === "b") await this.takeBack();
      else await this.happen({ ...this.about(step), kind: "look" });
      return true;
    }
    const begun = this.context.clock();
    const turned = await ask("Enter: turn, b: take back, q: pause > ");
    if (turned === null || turned === "q") return false;
    if (turned === "b") {
      await this.takeBack();
      return true;
    }
    this.call.out(`  = ${answerText(card)}\n`);
    const answer = await this.judge(ask);
    if (answer === null) return false;
    const seconds = Math.min(600, (this.context.clock() - begun) / 1000);
    await this.happen({ ...this.about(step), kind: "outcome", answer, ...askedAs(this.state, step), seconds });
    return true;
  }

  private async judge(ask: Ask): Promise<Answer | null> {
    for (;;) {
      const said = await ask("r: recalled, m: missed, q: pause > ");
      if (said === null || said === "q") return null;
      if (said === "r") return "recalled";
      if (said === "m") return "missed";
    }
  }

  private async happen(event: SittingEvent): Promise<void> {
    await this.send(event);
    const next = applyEvent(this.state, event);
    if (next.ok) this.state = next.value;
  }

  private async takeBack(): Promise<void> {
    const last = lastEvent(this.state);
    if (!last) return;
    await this.send({ ...this.stamp(), kind: "take-back", entry: last.id });
    this.state = withoutEvent(this.state, last.id);
  }

  private async send(entry: SentEntry): Promise<void> {
    const [receipt] = await recordEntries(this.context, [entry]);
    if (receipt?.status === "refused")
      throw new FailureError("conflict", receipt.reason ?? "The answer was not taken.");
  }

  private readonly stamp = () => ({ id: this.nextId(), box: this.box.id, at: this.context.clock() });

  private readonly about = (step: Exclude<Step, { kind: "done" }>) => ({
    ...this.stamp(),
    card: step.card.card,
    day: this.view.plan.day,
    sitting: this.view.plan.sitting,
  });
}

function title(step: Exclude<Step, { kind: "done" }>): string {
  if (step.kind === "visit") return `Compartment ${step.compartment}, bundle ${step.bundle}`;
  if (step.kind === "look") return "New card, first look";
  return step.kind === "introduce" ? "New card, asked" : "Second pass";
}

const answerText = (card: Card): string =>
  [sideWords(card.answer), card.story, card.note].filter((text) => text !== "").join("\n    ");

async function closingWords(context: Context, state: SittingState, view: SittingView): Promise<string> {
  const { movedUp, sentBack, kept, introduced } = summarise(state, view.compartments);
  const ahead = await lookAhead(context);
  return [
    "",
    `Sitting finished: ${movedUp} moved up, ${sentBack} sent back, ${kept} kept, ${introduced} introduced.`,
    `${ahead.date} asks ${ahead.reviews} cards and brings ${ahead.newCards} new: about ${Math.max(1, Math.round(ahead.minutes))} minutes.`,
    "",
  ].join("\n");
}

/** What a side says, or what it holds in place of words. */
const sideWords = (side: CardSide): string => sideText(side) || (side.sound ? "(a sound)" : "(a picture)");
