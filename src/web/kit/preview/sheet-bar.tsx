// Which sheet is looked at, and how closely.
import { useId, useState } from "react";
import type { SheetsOfPart } from "../../../core/kit/kit-sheet.ts";
import { count } from "../../words.ts";
import { PART_WORDS } from "../kit-words.ts";

interface SheetBarProps {
  /** Counted from 0. */
  readonly sheet: number;
  readonly sheets: number;
  readonly parts: readonly SheetsOfPart[];
  readonly look: (sheet: number) => void;
  readonly zoom: number;
  readonly setZoom: (zoom: number) => void;
}

const ZOOMS = [1, 2, 3, 4] as const;
const MOST_ZOOM = 4;

/** Buttons to turn sheets, to go to a part, and to look closer. */
export function SheetBar({ sheet, sheets, parts, look, zoom, setZoom }: SheetBarProps) {
  const starts = parts.map((_, i) => parts.slice(0, i).reduce((sum, one) => sum + one.sheets, 0));
  const here = starts.findLastIndex((start) => start <= sheet);
  return (
    <div className="sheet-bar">
      <div className="row">
        <Turn name="Previous sheet" sign="‹" off={sheet <= 0} go={() => look(sheet - 1)} />
        <SheetNumber sheet={sheet} sheets={sheets} look={look} />
        <Turn name="Next sheet" sign="›" off={sheet >= sheets - 1} go={() => look(sheet + 1)} />
      </div>
      <label className="part-choice">
        <span className="visually-hidden">Part</span>
        <select value={Math.max(0, here)} onChange={({ target }) => look(starts[Number(target.value)] ?? 0)}>
          {parts.map(({ part }, i) => (
            <option key={part} value={i}>
              {PART_WORDS[part].name}
            </option>
          ))}
        </select>
      </label>
      <div className="row">
        <Turn name="Smaller" sign="−" off={zoom <= 1} go={() => setZoom(zoom - 1)} />
        <span className="zoom" role="status">
          {ZOOMS.includes(zoom as 1) ? `${zoom} ×` : ""}
        </span>
        <Turn name="Larger" sign="+" off={zoom >= MOST_ZOOM} go={() => setZoom(zoom + 1)} />
      </div>
    </div>
  );
}

function Turn(props: { readonly name: string; readonly sign: string; readonly off: boolean; readonly go: () => void }) {
  const { name, sign, off, go } = props;
  return (
    <button
      type="button"
      className="icon"
      aria-label={name}
      aria-disabled={off ? true : undefined}
      onClick={() => off || go()}
    >
      {sign}
    </button>
  );
}

function SheetNumber({ sheet, sheets, look }: Pick<SheetBarProps, "sheet" | "sheets" | "look">) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const type = (text: string): void => {
    setTyped(text);
    const number = Number(text);
    // Beyond the last sheet the last is shown; how many there are may just be changing.
    if (Number.isInteger(number) && number >= 1) look(number - 1);
  };
  return (
    <span className="sheet-number">
      <label htmlFor={id}>Sheet</label>
      <input
        id={id}
        inputMode="numeric"
        value={typed ?? (sheets === 0 ? "0" : String(sheet + 1))}
        maxLength={6}
        onChange={({ target }) => type(target.value)}
        onBlur={() => setTyped(null)}
      />
      <span>of {count(sheets)}</span>
    </span>
  );
}
