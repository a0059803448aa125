// The fields of the chart designer.
import { useId } from "react";
import type { Result } from "../../../core/result.ts";
import { Stepper } from "../../shell/stepper.tsx";
import { type DesignForm, formTabs, type Growth, mostCompartments, tabsRange } from "./design-form.ts";
import { periodWords } from "./figure-words.ts";
import { TabsSlider } from "./tabs-slider.tsx";

const GROWTHS: readonly (readonly [Growth, string])[] = [
  [2, "Doubling"],
  [3, "Tripling"],
  ["own", "My own days"],
];

interface DesignFieldsProps {
  readonly form: DesignForm;
  /** The periods that the form makes, or what is wrong with them. */
  readonly periods: Result<readonly number[], string>;
  /** Whether a chart was asked for, so that even an empty field is to be filled in. */
  readonly showProblem: boolean;
  readonly change: (part: Partial<DesignForm>) => void;
}

/** Growth, compartments or typed days, and tabs. */
export function DesignFields({ form, periods, showProblem, change }: DesignFieldsProps) {
  const { growth, compartments, tabs } = form;
  const range = periods.ok ? tabsRange(periods.value) : null;
  return (
    <>
      <fieldset>
        <legend>Days from visit to visit</legend>
        <div className="chips">
          {GROWTHS.map(([value, name]) => (
            <label key={value} className="chip">
              <input
                type="radio"
                name="growth"
                checked={growth === value}
                onChange={() => change({ growth: value, compartments: withinMost(compartments, value) })}
              />
              <span>{name}</span>
            </label>
          ))}
        </div>
      </fieldset>
      {growth === "own" ? (
        <TypedPeriods form={form} problem={periods.ok ? null : periods.error} show={showProblem} change={change} />
      ) : (
        <div>
          <Stepper
            label="Compartments"
            min={1}
            max={mostCompartments(growth)}
            value={compartments}
            onChange={(next) => change({ compartments: next })}
          />
          <p className="hint">{periods.ok ? periodWords(periods.value) : ""}</p>
        </div>
      )}
      {range ? (
        <TabsSlider
          range={range}
          tabs={formTabs(form, range)}
          dated={form.dated}
          onTabs={(next) => change({ tabs: next })}
          onDated={(dated) => change({ dated })}
        />
      ) : (
        <p className="hint">{`Tabs: at most ${tabs}`}</p>
      )}
    </>
  );
}

const withinMost = (compartments: number, growth: Growth): number =>
  growth === "own" ? compartments : Math.min(compartments, mostCompartments(growth));

function TypedPeriods(props: {
  readonly form: DesignForm;
  readonly problem: string | null;
  readonly show: boolean;
  readonly change: DesignFieldsProps["change"];
}) {
  const { form, problem, show, change } = props;
  const id = useId();
  const wrong = problem !== null && (show || form.typed.trim() !== "");
  return (
    <div className="field">
      <label htmlFor={id}>Days for compartment 1, 2, 3 …</label>
      <input
        id={id}
        value={form.typed}
        inputMode="text"
        autoComplete="off"
        placeholder="1, 2, 4, 8"
        aria-invalid={wrong ? true : undefined}
        aria-describedby={`${id}-problem`}
        onChange={(event) => change({ typed: event.target.value })}
      />
      <p id={`${id}-problem`} className={wrong ? "field-problem" : "hint"} role={wrong ? "alert" : undefined}>
        {wrong ? problem : "Whole numbers with commas between; up to 20."}
      </p>
    </div>
  );
}
