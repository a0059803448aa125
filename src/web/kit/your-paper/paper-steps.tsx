// What was said of paper lately, each taken back in one step.
import type { PaperCardsView } from "../../../app/print-versions.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { counted, instantIn } from "../../words.ts";
import { useUndoPrintStep } from "./use-undo-print-step.ts";

/** The newest steps first; nothing where there are none. */
export function PaperSteps({ steps }: Pick<PaperCardsView, "steps">) {
  const undo = useUndoPrintStep();
  if (steps.length === 0) return null;
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return (
    <div className="paper-steps">
      <h3>Recorded lately</h3>
      <ul>
        {steps.map(({ id, at, kind, cards }) => (
          <li key={id}>
            <span>
              {counted(cards, "card")} {kind}, {instantIn(at, zone)}
            </span>
            <BusyButton
              className="quiet"
              aria-label={`Take back: ${counted(cards, "card")} ${kind}`}
              busy={undo.isPending}
              onClick={() => undo.mutate(id)}
            >
              Take back
            </BusyButton>
          </li>
        ))}
      </ul>
    </div>
  );
}
