// How many tabs a chart may have, with a slider.
import { useId } from "react";
import { counted } from "../../words.ts";
import type { TabsRange } from "./design-form.ts";

interface TabsSliderProps {
  readonly range: TabsRange;
  /** Tabs asked for, within the range. */
  readonly tabs: number;
  readonly dated: boolean;
  readonly onTabs: (tabs: number) => void;
  readonly onDated: (dated: boolean) => void;
}

/** From one tab a compartment on; or a tab for every day, which makes dated cards. */
export function TabsSlider({ range, tabs, dated, onTabs, onDated }: TabsSliderProps) {
  const id = useId();
  const all = dated && range.dated !== null;
  return (
    <div className="tabs-slider">
      <div className="field">
        <label htmlFor={id}>Tabs at most</label>
        <div className="slider-row">
          <input
            id={id}
            type="range"
            min={range.least}
            max={range.most}
            value={Math.min(tabs, range.most)}
            disabled={all || range.least === range.most}
            aria-valuetext={counted(tabs, "tab")}
            onChange={(event) => onTabs(Number(event.target.value))}
          />
          <output htmlFor={id}>{tabs}</output>
        </div>
      </div>
      {range.dated === null ? null : (
        <label className="choice">
          <input type="checkbox" checked={dated} onChange={(event) => onDated(event.target.checked)} />
          <span>A tab for every day, {counted(range.dated, "tab")}: dated cards</span>
        </label>
      )}
    </div>
  );
}
