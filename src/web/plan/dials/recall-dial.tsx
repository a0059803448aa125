// How many cards are recalled at a visit: as the box has measured, or as one supposes.
import type { RecallCount } from "../../../core/recall/estimate.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { counted } from "../../words.ts";
import { Dial } from "./dial.tsx";

const PERCENT = { min: 50, max: 99 } as const;

/** The dial of recall; `recall` is null where it is as the box has measured, which is said if there is a `box`. */
export function RecallDial(props: {
  readonly recall: number | null;
  readonly visits: readonly RecallCount[];
  /** The chance of recall in each compartment of the planned chart, as far as the box has measured it. */
  readonly measured: readonly number[];
  readonly box: boolean;
  readonly onChange: (recall: number | null) => void;
}) {
  const { recall, visits, measured, box, onChange } = props;
  const value = Math.round(100 * (recall ?? meanRecall(visits, measured)));
  return (
    <div className="dial-block">
      <Dial
        label="Recalled at a visit, of 100 cards"
        value={value}
        {...PERCENT}
        words={(cards) => `${cards} of 100 recalled`}
        onChange={(cards) => onChange(cards / 100)}
      />
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
