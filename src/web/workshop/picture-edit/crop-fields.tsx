// What is cut off a picture, side by side, in hundredths.
import { useState } from "react";
import type { Region } from "../../../core/facts/fact.ts";

const SIDES = ["Left", "Top", "Right", "Bottom"] as const;
const NOTHING = [0, 0, 0, 0];

/** Four numbers and a button. */
export function CropFields({ crop }: { readonly crop: (part: Region) => void }) {
  const [cut, setCut] = useState<readonly number[]>(NOTHING);
  const [left = 0, top = 0, right = 0, bottom = 0] = cut.map((part) => part / 100);
  const part: Region = { x: left, y: top, width: 1 - left - right, height: 1 - top - bottom };
  return (
    <fieldset className="crop-fields">
      <legend>Cut off, in per cent</legend>
      {SIDES.map((side, i) => (
        <label key={side} className="field inline">
          <span>{side}</span>
          <input
            type="number"
            min={0}
            max={95}
            value={cut[i]}
            onChange={(event) =>
              setCut(cut.map((old, n) => (n === i ? Math.min(95, Math.max(0, Number(event.target.value) || 0)) : old)))
            }
          />
        </label>
      ))}
      <button
        type="button"
        disabled={cut.every((one) => one === 0) || part.width <= 0 || part.height <= 0}
        onClick={() => {
          crop(part);
          setCut(NOTHING);
        }}
      >
        Cut
      </button>
    </fieldset>
  );
}
