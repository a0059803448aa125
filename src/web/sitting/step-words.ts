// What the step at hand is called and what it asks for, in plain words.
import type { Chart } from "../../core/chart/chart.ts";
import type { Step } from "../../core/sitting/sitting.ts";
import { capital, pileName } from "../words.ts";

/** A step that shows a card. */
export type CardStep = Exclude<Step, { kind: "done" }>;

/** The name of the pile and how many cards it still holds. */
export function stepTitle(step: CardStep, chart: Chart): string {
  const left = `${step.left} left`;
  switch (step.kind) {
    case "visit": {
      const bundles = chart.compartments[step.compartment - 1]?.bundles ?? 1;
      return `${capital(pileName(step.compartment, step.bundle, bundles))} — ${left}`;
    }
    case "look":
      return `New cards, first look — ${left}`;
    case "introduce":
      return `New cards, asked in turn — ${left}`;
    case "second":
      return `Second pass — ${left}`;
  }
}

const HOW = "Say the answer to yourself, then turn.";

/** What to do with the card, where it is not plain; `first` is the first card that is asked. */
export function stepHint(step: CardStep, first: boolean): string {
  switch (step.kind) {
    case "visit":
      return first ? HOW : "";
    case "look":
      return "Read both sides. You will be asked in a moment.";
    case "introduce":
      return `${first ? `${HOW} ` : ""}A card you miss goes to the back of this pile, until each is recalled.`;
    case "second":
      return "Cards missed today, asked once more until each is recalled.";
  }
}
