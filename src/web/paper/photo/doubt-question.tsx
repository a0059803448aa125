// One doubtful box, enlarged, with its two answers.
import { printedNumber } from "../../../core/cards/card-number.ts";
import type { BoxCrop } from "../../../core/paper/photo/crop-box.ts";
import type { Doubt } from "../../../core/paper/photo/sheet-draft.ts";
import { ArrivingHeading } from "../../shell/arriving-heading.tsx";
import { useKeys } from "../../sitting/use-keys.ts";
import { CropPicture } from "./crop-picture.tsx";

interface DoubtQuestionProps {
  readonly doubt: Doubt;
  readonly crop: BoxCrop;
  /** Which question it is, and of how many. */
  readonly count: readonly [at: number, of: number];
  readonly answer: (marked: boolean) => void;
  /** Back to the question before; null at the first. */
  readonly back: (() => void) | null;
}

/** Asks whether a box is marked, by button or by the keys of a sitting. */
export function DoubtQuestion({ doubt, crop, count: [at, of], answer, back }: DoubtQuestionProps) {
  const { number } = doubt.box;
  const name = number === null ? "the box “left out”" : `the box of card ${printedNumber(number)}`;
  const [yes, no] = number === null ? ["Left out", "Not left out"] : ["Missed", "Recalled"];
  const [marked, empty] = [() => answer(true), () => answer(false)];
  useKeys({ m: marked, ArrowLeft: marked, r: empty, ArrowRight: empty, ...(back ? { Backspace: back, u: back } : {}) });
  return (
    <section className="doubt" aria-labelledby="doubt-heading">
      <ArrivingHeading id="doubt-heading" key={doubt.key}>
        Please look: {at} of {of}
      </ArrivingHeading>
      <p>
        What does {name} say? {number === null ? "A mark leaves out the whole pile on its line. " : null}A box that was
        blacked out counts as empty.
      </p>
      <CropPicture crop={crop} label={`Enlarged: ${name}`} />
      <div className="doubt-answers">
        <button type="button" className="careful big" aria-keyshortcuts="ArrowLeft" onClick={marked}>
          <span className="key-cap" aria-hidden="true">
            ←
          </span>{" "}
          {yes}
        </button>
        <button type="button" className="big" aria-keyshortcuts="ArrowRight" onClick={empty}>
          {no}{" "}
          <span className="key-cap" aria-hidden="true">
            →
          </span>
        </button>
      </div>
      {back ? (
        <button type="button" className="quiet" aria-keyshortcuts="Backspace" onClick={back}>
          Back to the box before
        </button>
      ) : null}
    </section>
  );
}
