// How many new cards come when: one number a day, or one for each weekday, and until which date.
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import type { NewCardSchedule } from "../../../core/load/new-cards.ts";
import { Stepper } from "../../shell/stepper.tsx";
import { counted, WEEKDAYS } from "../../words.ts";
import { Dial } from "./dial.tsx";
import { byWeekday, eachDay, eachWeekday, lastDateOf, steadily, until } from "./schedule.ts";

/** The end of the slider, and the most that a box takes. */
const MOST = { drawn: 50, typed: 1000 } as const;

interface NewCardsProps {
  readonly schedule: NewCardSchedule;
  readonly onChange: (schedule: NewCardSchedule) => void;
}

/** The dial of new cards. */
export function NewCardsDial({ schedule, onChange }: NewCardsProps) {
  if (schedule.kind === "weekdays") return <WeekdaySteppers schedule={schedule} onChange={onChange} />;
  return (
    <Dial
      label="New cards a day"
      value={eachDay(schedule)}
      max={MOST.drawn}
      most={MOST.typed}
      words={(each) => counted(each, "new card")}
      onChange={(each) => onChange(steadily(schedule, each))}
    />
  );
}

function WeekdaySteppers({ schedule, onChange }: NewCardsProps) {
  const each = eachWeekday(schedule);
  return (
    <fieldset>
      <legend>New cards a day</legend>
      <div className="weekday-steppers">
        {WEEKDAYS.map((name, day) => (
          <Stepper
            key={name}
            label={name}
            value={each[day] ?? 0}
            max={MOST.typed}
            onChange={(value) => onChange(byWeekday(schedule, each.with(day, value)))}
          />
        ))}
      </div>
    </fieldset>
  );
}

/** What else can be said about the new cards. */
export function NewCardsMore(props: NewCardsProps & { readonly from: LocalDate }) {
  const { schedule, onChange, from } = props;
  const weekly = schedule.kind === "weekdays";
  const last = lastDateOf(schedule);
  return (
    <div className="field-row">
      <label className="choice">
        <input
          type="checkbox"
          checked={weekly}
          onChange={() =>
            onChange(weekly ? steadily(schedule, eachDay(schedule)) : byWeekday(schedule, eachWeekday(schedule)))
          }
        />
        <span>A different number for each weekday</span>
      </label>
      <label className="field">
        <span>Last day for new cards (none if left out)</span>
        <input
          type="date"
          min={from}
          value={last ?? ""}
          onChange={(event) => onChange(until(schedule, event.target.value || null))}
        />
      </label>
    </div>
  );
}
