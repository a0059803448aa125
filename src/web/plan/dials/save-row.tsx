// What of the plan is not in the box, and the buttons that take it over or leave it.
import { Link } from "wouter";
import type { BoxView } from "../../../app/views.ts";
import type { NewCardSchedule } from "../../../core/load/new-cards.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useNotify } from "../../shell/notices.tsx";
import { Trouble } from "../../shell/states.tsx";
import { POLICY_WORDS } from "../../today/missed-days.tsx";
import { counted } from "../../words.ts";
import type { Draft } from "../use-draft.ts";
import { useSaveBox } from "./save-box.ts";
import { lastDateOf } from "./schedule.ts";

/** The row under the dials. It is always there, so that nothing moves under a slider. */
export function SaveRow({ box, plan }: { readonly box: BoxView | null; readonly plan: Draft }) {
  const { draft, differs, drop, change } = plan;
  const notify = useNotify();
  const leave = (): void => {
    const before = Object.fromEntries([...differs].map((part) => [part, draft[part]]));
    drop();
    notify("The plan is back at your box.", () => change(before));
  };
  return (
    <div className="row save-row">
      <p className="hint">{box ? standing(plan) : <NoBoxYet />}</p>
      {box ? <SaveButtons box={box} plan={plan} /> : null}
      {differs.size > 0 ? (
        <button type="button" className="quiet" onClick={leave}>
          {box ? "Back to my box" : "Begin again"}
        </button>
      ) : null}
    </div>
  );
}

function standing({ draft, differs }: Draft): string {
  if (differs.size === 0) return "This is your box as it stands.";
  return differs.has("schedule") && paceOfBox(draft.schedule) === null
    ? "Your box has one number for every day, so this stays a plan."
    : "Only a plan: your box stays as it is until you save.";
}

/** The pace as a box can have it: one number for every day and no last one; null for anything else. */
const paceOfBox = (schedule: NewCardSchedule): number | null =>
  schedule.kind === "steady" && lastDateOf(schedule) === null ? schedule.each : null;

function NoBoxYet() {
  return (
    <>
      There is no box yet: this plans one begun today. You set it up on the <Link href="/">Today page</Link>.
    </>
  );
}

function SaveButtons({ box, plan }: { readonly box: BoxView; readonly plan: Draft }) {
  const { draft, drop } = plan;
  const save = useSaveBox();
  const { policy } = draft;
  const each = paceOfBox(draft.schedule);
  const savePace = (newPerDay: number): void =>
    save.mutate({
      change: { newPerDay },
      before: { newPerDay: box.newPerDay },
      said: `Your box now has ${counted(newPerDay, "new card")} a day.`,
      done: () => drop(["schedule"]),
    });
  const savePolicy = (): void =>
    save.mutate({
      change: { policy },
      before: { policy: box.calendar.policy },
      said: `When a day is missed: ${POLICY_WORDS[policy].name.toLowerCase()}.`,
      done: () => drop(["policy"]),
    });
  return (
    <>
      {each !== null && each !== box.newPerDay ? (
        <BusyButton className="primary" busy={save.isPending} onClick={() => savePace(each)}>
          Use {counted(each, "new card")} a day
        </BusyButton>
      ) : null}
      {policy === box.calendar.policy ? null : (
        <BusyButton className="primary" busy={save.isPending} onClick={savePolicy}>
          Use “{POLICY_WORDS[policy].name}”
        </BusyButton>
      )}
      {save.error ? <Trouble error={save.error} /> : null}
    </>
  );
}
