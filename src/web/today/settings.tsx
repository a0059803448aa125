// The settings of a box: pace, rest days, the hour at which a day begins.
import { useMutation } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import type { BoxView } from "../../app/views.ts";
import type { DateRange, MissedDayPolicy } from "../../core/calendar/calendar.ts";
import { isTimeZone } from "../../core/calendar/local-date.ts";
import { api, type BoxSettings } from "../client.ts";
import { useRefresh } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { Trouble } from "../shell/states.tsx";
import { Stepper } from "../shell/stepper.tsx";
import { useUnsaved } from "../shell/use-unsaved.ts";
import { WEEKDAYS } from "../words.ts";
import { Holidays, holidayProblem, NO_HOLIDAY, typedHoliday, withHoliday } from "./holidays.tsx";
import { POLICY_WORDS } from "./missed-days.tsx";

type Draft = { [Setting in keyof BoxSettings]-?: NonNullable<BoxSettings[Setting]> };

const draftOf = ({ calendar, newPerDay }: BoxView): Draft => ({
  newPerDay,
  timeZone: calendar.timeZone,
  rollOverHour: calendar.rollOverHour,
  restWeekdays: [...calendar.restWeekdays],
  restDates: [...calendar.restDates],
  policy: calendar.policy,
});

/** A panel that stays folded until it is wanted. */
export function BoxSettingsPanel({ box }: { readonly box: BoxView }) {
  // Only what was changed here is kept, so that a choice made elsewhere on the page is not overwritten.
  const [changes, setChanges] = useState<Partial<Draft>>({});
  const [typed, setTyped] = useState(NO_HOLIDAY);
  const draft = { ...draftOf(box), ...changes };
  const dirty = JSON.stringify(draft) !== JSON.stringify(draftOf(box)) || typed.from + typed.to !== "";
  useUnsaved(dirty, () => setChanges({}));
  const refresh = useRefresh();
  const notify = useNotify();
  const save = useMutation({
    mutationFn: () => api.changeBox(withTyped(draft, typed)),
    onSuccess: async () => {
      notify("Settings saved. They count from the next box day on.");
      await refresh();
      setChanges({});
      setTyped(NO_HOLIDAY);
    },
  });
  const change = (part: Partial<Draft>): void => setChanges((all) => ({ ...all, ...part }));
  const problem = holidayProblem(typed) ?? (isTimeZone(draft.timeZone) ? null : "The time zone is not known.");
  const busy = save.isPending || problem !== null;
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (!busy) save.mutate();
  };
  return (
    <details className="settings">
      <summary>Settings of this box</summary>
      <form className="sheet" onSubmit={submit}>
        <Stepper
          label="New cards a day"
          value={draft.newPerDay}
          max={1000}
          onChange={(newPerDay) => change({ newPerDay })}
        />
        <RestWeekdays chosen={draft.restWeekdays} onChange={(restWeekdays) => change({ restWeekdays })} />
        <Holidays
          ranges={draft.restDates}
          onChange={(restDates) => change({ restDates: [...restDates] })}
          typed={typed}
          onType={setTyped}
        />
        <PolicyChoice policy={draft.policy} onChange={(policy) => change({ policy })} />
        <DayStart draft={draft} change={change} />
        <p className="row">
          <BusyButton type="submit" className="primary" busy={busy}>
            Save settings
          </BusyButton>
          <span className="hint">{problem ?? (dirty ? "Not saved yet." : "")}</span>
        </p>
        {save.error ? <Trouble error={save.error} /> : null}
      </form>
    </details>
  );
}

/** A holiday that was typed and not added is meant all the same. */
function withTyped(draft: Draft, typed: DateRange): Draft {
  const added = typedHoliday(typed);
  return added ? { ...draft, restDates: withHoliday(draft.restDates, added) } : draft;
}

function RestWeekdays(props: { readonly chosen: readonly number[]; readonly onChange: (days: number[]) => void }) {
  const { chosen, onChange } = props;
  const toggle = (day: number): void =>
    onChange(chosen.includes(day) ? chosen.filter((one) => one !== day) : [...chosen, day].sort());
  return (
    <fieldset>
      <legend>Rest days in every week</legend>
      <div className="chips">
        {WEEKDAYS.map((name, i) => {
          const day = i + 1;
          const last = chosen.length === 6 && !chosen.includes(day);
          return (
            <label key={name} className="chip">
              <input type="checkbox" checked={chosen.includes(day)} disabled={last} onChange={() => toggle(day)} />
              {name}
            </label>
          );
        })}
      </div>
    </fieldset>
  );
}

function PolicyChoice(props: {
  readonly policy: MissedDayPolicy;
  readonly onChange: (policy: MissedDayPolicy) => void;
}) {
  const policies = Object.entries(POLICY_WORDS) as [MissedDayPolicy, { name: string; does: string }][];
  return (
    <fieldset>
      <legend>When a day is missed</legend>
      {policies.map(([policy, words]) => (
        <label key={policy} className="choice">
          <input type="radio" name="policy" checked={props.policy === policy} onChange={() => props.onChange(policy)} />
          <span>
            <strong>{words.name}.</strong> {words.does}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

function DayStart({ draft, change }: { readonly draft: Draft; readonly change: (part: Partial<Draft>) => void }) {
  const wrong = !isTimeZone(draft.timeZone);
  return (
    <div className="field-row">
      <label className="field">
        <span>A new day begins at</span>
        <select value={draft.rollOverHour} onChange={(event) => change({ rollOverHour: Number(event.target.value) })}>
          {Array.from({ length: 24 }, (_, hour) => `${String(hour).padStart(2, "0")}:00`).map((name, hour) => (
            <option key={name} value={hour}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span>Time zone</span>
        <input
          list="time-zones"
          value={draft.timeZone}
          aria-invalid={wrong}
          onChange={(event) => change({ timeZone: event.target.value.trim() })}
        />
        <datalist id="time-zones">
          {Intl.supportedValuesOf("timeZone").map((zone) => (
            <option key={zone} value={zone} />
          ))}
        </datalist>
        {wrong ? <span className="field-problem">A name such as Europe/Lisbon is needed.</span> : null}
      </label>
    </div>
  );
}
