// How many cards are recalled at a visit: as the box has measured, or as one supposes.
import type { RecallCount } from "../../../core/recall/estimate.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Stepper } from "../../shell/stepper.tsx";
import { counted } from "../../words.ts";
import { type PlannedRecall, recallIn } from "../plan-draft.ts";
import { Dial } from "./dial.tsx";

const LABEL = "Recalled at a visit, of 100 cards";
const PERCENT = { min: 50, max: 99 } as const;

/** The dial of recall; `recall` is null where it is as the box has measured, which is said if there is a `box`. */
export function RecallDial(props: {
  readonly recall: PlannedRecall;
  readonly visits: readonly RecallCount[];
  /** The chance of recall in each compartment of the planned chart, as far as the box has measured it. */
  readonly measured: readonly number[];
  readonly box: boolean;
  readonly onChange: (recall: PlannedRecall) => void;
}) {
  const { recall, visits, measured, box, onChange } = props;
  return (
    <div className="dial-block">
      {recall === null || typeof recall === "number" ? (
        <Dial
          label={LABEL}
          value={Math.round(100 * (recall ?? meanRecall(visits, measured)))}
          {...PERCENT}
          words={(cards) => `${cards} of 100 recalled`}
          onChange={(cards) => onChange(cards / 100)}
        />
      ) : (
        <RecallSteppers recall={measured.map((_, i) => recallIn(recall, i + 1))} onChange={onChange} />
      )}
      {box ? (
        <p className="dial-note">
          <span className="hint">
            {recall === null ? measuredWords(visits, measured) : "Not what your box has measured."}
          </span>
          {recall === null ? null : (
            <BusyButton className="quiet" busy={false} onClick={() => onChange(null)}>
              As my box has measured
            </BusyButton>
          )}
        </p>
      ) : (
        <p className="dial-note hint">Nine in ten is common. Your box will measure your own.</p>
      )}
    </div>
  );
}

function RecallSteppers(props: {
  readonly recall: readonly number[];
  readonly onChange: (recall: readonly number[]) => void;
}) {
  const { recall, onChange } = props;
  return (
    <fieldset>
      <legend>{LABEL}</legend>
      <div className="weekday-steppers">
        {recall.map((chance, i) => (
          <Stepper
            // The place is the compartment.
            key={`${i}`}
            label={`Compartment ${i + 1}`}
            value={Math.round(100 * chance)}
            {...PERCENT}
            onChange={(cards) => onChange(recall.with(i, cards / 100))}
          />
        ))}
      </div>
    </fieldset>
  );
}

/** The switch between one number and one for each compartment; it begins with what was measured. */
export function RecallMore(props: {
  readonly recall: PlannedRecall;
  readonly measured: readonly number[];
  readonly onChange: (recall: PlannedRecall) => void;
}) {
  const { recall, measured, onChange } = props;
  const several = recall !== null && typeof recall !== "number";
  const apart = (): readonly number[] =>
    measured.map((chance) => wholePercent(typeof recall === "number" ? recall : chance));
  const together = (all: readonly number[]): number =>
    wholePercent(all.reduce((sum, one) => sum + one, 0) / Math.max(1, all.length));
  return (
    <label className="choice">
      <input type="checkbox" checked={several} onChange={() => onChange(several ? together(recall) : apart())} />
      <span>A different recall in each compartment</span>
    </label>
  );
}

/** The nearest number that the dial can stand on. */
const wholePercent = (chance: number): number =>
  Math.min(PERCENT.max, Math.max(PERCENT.min, Math.round(100 * chance))) / 100;

/** The mean over the visits; over the compartments where there were none. */
function meanRecall(visits: readonly RecallCount[], measured: readonly number[]): number {
  const recalled = visits.reduce((sum, one) => sum + one.recalled, 0);
  const missed = visits.reduce((sum, one) => sum + one.missed, 0);
  if (recalled + missed > 0) return recalled / (recalled + missed);
  return measured.reduce((sum, one) => sum + one, 0) / measured.length;
}

/** "As your box has measured in 1,145 visits: 86 to 91, by compartment." */
export function measuredWords(visits: readonly RecallCount[], measured: readonly number[]): string {
  const all = visits.reduce((sum, { recalled, missed }) => sum + recalled + missed, 0);
  if (all === 0) return "Nothing is measured yet: nine in ten is taken, as is common.";
  const percent = measured.map((one) => Math.round(100 * one));
  const [least, most] = [Math.min(...percent), Math.max(...percent)];
  const span = least === most ? `${least} in each compartment` : `${least} to ${most}, by compartment`;
  return `As your box has measured in ${counted(all, "visit")}: ${span}.`;
}
