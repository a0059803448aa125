// How many new cards come when: one number a day, one for each weekday, until which date, or a list.
import { useId, useState } from "react";
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import type { NewCardSchedule } from "../../../core/load/new-cards.ts";
import { Stepper } from "../../shell/stepper.tsx";
import { capital, counted, WEEKDAYS } from "../../words.ts";
import { Dial } from "./dial.tsx";
import {
  byWeekday,
  eachDay,
  eachWeekday,
  LIST,
  lastDateOf,
  scheduleWords,
  steadily,
  typedList,
  until,
} from "./schedule.ts";

/** The end of the slider, and the most that a box takes. */
const MOST = { drawn: 50, typed: 1000 } as const;

interface NewCardsProps {
  readonly schedule: NewCardSchedule;
  readonly onChange: (schedule: NewCardSchedule) => void;
}

/** The dial of new cards. */
export function NewCardsDial({ schedule, onChange }: NewCardsProps) {
  if (schedule.kind === "weekdays") return <WeekdaySteppers schedule={schedule} onChange={onChange} />;
  if (schedule.kind === "list") return <ListInstead schedule={schedule} onChange={onChange} />;
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

function ListInstead({ schedule, onChange }: NewCardsProps) {
  const each = eachDay(schedule);
  return (
    <>
      <p className="dial-name">New cards a day</p>
      <p className="dial-note">
        <span>{capital(scheduleWords(schedule))}; none after that.</span>{" "}
        <button type="button" className="quiet" onClick={() => onChange(steadily(schedule, each))}>
          {counted(each, "new card")} every day instead
        </button>
      </p>
    </>
  );
}

/** The list as it is typed: taken once it can be read, and left as it stands while it cannot. */
function ListField({ schedule, onChange }: NewCardsProps) {
  const id = useId();
  const own = schedule.kind === "list" ? schedule.each.join(", ") : "";
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? own;
  const wrong = text.trim() !== "" && typedList(text) === null;
  const type = (next: string): void => {
    setTyped(next);
    const list = typedList(next);
    if (list) onChange(list);
    else if (next.trim() === "" && schedule.kind === "list") onChange(steadily(schedule, eachDay(schedule)));
  };
  return (
    <div className="field list-field">
      <label htmlFor={id}>A number for each practice day from now on (none after the last)</label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder="20, 20, 15, 0, 10"
        aria-invalid={wrong}
        aria-describedby={`${id}-about`}
        onChange={(event) => type(event.target.value)}
        onBlur={() => (wrong ? null : setTyped(null))}
      />
      <p id={`${id}-about`} className={wrong ? "field-problem" : "hint"} role={wrong ? "alert" : undefined}>
        {wrong
          ? `Write up to ${LIST.days} whole numbers from 0 to ${counted(LIST.cards, "card")}, with commas between.`
          : "For a course that has its own pace. Left empty, every day has the same number."}
      </p>
    </div>
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
      <ListField schedule={schedule} onChange={onChange} />
    </div>
  );
}
