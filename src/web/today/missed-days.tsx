// After missed days: both ways to go on, side by side, with what each costs, before one is chosen.
import { useMutation } from "@tanstack/react-query";
import type { PolicyPreview, TodayView } from "../../app/views.ts";
import type { MissedDayPolicy } from "../../core/calendar/calendar.ts";
import { api } from "../client.ts";
import { useRefresh } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { Trouble } from "../shell/states.tsx";
import { vars } from "../vars.ts";
import { counted } from "../words.ts";

/** What a policy is called and what it does. */
export const POLICY_WORDS: Readonly<Record<MissedDayPolicy, { readonly name: string; readonly does: string }>> = {
  "chart-waits": {
    name: "The chart waits",
    does: "Day numbers move only when you sit. You take up where you stopped.",
  },
  "chart-goes-on": {
    name: "The chart goes on",
    does: "Day numbers move every day. All that fell due is visited today, once.",
  },
};

/** The choice between the policies for missed days. */
export function MissedDays({ view, policy }: { readonly view: TodayView; readonly policy: MissedDayPolicy }) {
  const refresh = useRefresh();
  const notify = useNotify();
  const choose = useMutation({
    mutationFn: (chosen: MissedDayPolicy) => api.changeBox({ policy: chosen }),
    onSuccess: (_, chosen) => {
      notify(`${POLICY_WORDS[chosen].name}.`);
      return refresh();
    },
  });
  const most = Math.max(1, ...view.policies.flatMap((one) => [...one.ahead, one.dueToday]));
  return (
    <section className="sheet missed-days" aria-labelledby="missed-days">
      <h2 id="missed-days">{counted(view.missedDays, "day")} without a sitting</h2>
      <p>It happens. Choose how the chart takes it; you can change your mind until you begin.</p>
      <div className="policies">
        {view.policies.map((preview) => (
          <Policy
            key={preview.policy}
            preview={preview}
            most={most}
            chosen={preview.policy === policy}
            busy={choose.isPending}
            choose={() => choose.mutate(preview.policy)}
          />
        ))}
      </div>
      {choose.error ? <Trouble error={choose.error} /> : null}
    </section>
  );
}

function Policy(props: {
  readonly preview: PolicyPreview;
  readonly most: number;
  readonly chosen: boolean;
  readonly busy: boolean;
  readonly choose: () => void;
}) {
  const { preview, most, chosen, busy, choose } = props;
  const words = POLICY_WORDS[preview.policy];
  const heaviest = Math.max(...preview.ahead, 0);
  return (
    <div className="policy" data-chosen={chosen ? "" : undefined}>
      <h3>{words.name}</h3>
      <p>{words.does}</p>
      <p>
        <strong>{counted(preview.dueToday, "card")} today</strong>; at most {counted(heaviest, "card")} on a day of the
        next two weeks.
      </p>
      <ol className="bars" aria-label="Expected cards on the next practice days, today first">
        {preview.ahead.map((reviews, i) => (
          // The place in the row is the day.
          <li key={`${i}`} style={vars({ "--share": reviews / most })}>
            <span className="visually-hidden">{Math.round(reviews)}</span>
          </li>
        ))}
      </ol>
      <BusyButton aria-pressed={chosen} busy={busy} onClick={choose}>
        {chosen ? `${words.name}: chosen` : words.name}
      </BusyButton>
    </div>
  );
}
