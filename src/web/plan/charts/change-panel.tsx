// The planned chart for a running box: what would become of its cards, before anything is changed.
import { useMemo } from "react";
import type { BoxView, PlanView } from "../../../app/views.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useConfirm } from "../../shell/confirm.tsx";
import { Trouble } from "../../shell/states.tsx";
import { count, counted } from "../../words.ts";
import type { PlanDraft } from "../plan-draft.ts";
import { changeWords, tabWords } from "./change-words.ts";
import { previewChange } from "./chart-change.ts";
import type { NamedChart } from "./compared-charts.ts";
import { LoadChange } from "./load-change.tsx";
import { tabChange } from "./tab-change.ts";
import { useChangeChart } from "./use-change-chart.ts";

interface ChangePanelProps {
  readonly view: PlanView;
  readonly box: BoxView;
  readonly draft: PlanDraft;
  /** What the planned chart is called. */
  readonly name: string;
  /** Keeps the chart that the box had beside the others. */
  readonly onFound: (found: NamedChart) => void;
}

/** The panel; shown while the planned chart is not the box's own. */
export function ChangePanel({ view, box, draft, name, onFound }: ChangePanelProps) {
  const confirm = useConfirm();
  const preview = useMemo(() => previewChange(view, draft, box.chart), [view, draft, box.chart]);
  const change = useChangeChart(() => onFound({ name: "The chart before", chart: box.chart }));
  const { cards, moved } = preview;
  const ask = async (): Promise<void> => {
    const yes = await confirm({
      title: "Use this chart for your box?",
      body: `${counted(moved, "card")} of ${count(cards)} will lie elsewhere or come on another day. None is lost. You can take it back until cards are asked again.`,
      yes: "Use this chart",
    });
    if (yes) change.mutate(draft.chart);
  };
  return (
    <section className="sheet" aria-labelledby="charts-change">
      <h2 id="charts-change">Use this chart for your box</h2>
      <p>
        So far “{name}” is only planned with. {changeWords(preview)}
      </p>
      <LoadChange days={preview.days} />
      <p>{tabWords(tabChange(box.chart, draft.chart))}</p>
      <p className="hint">
        The box goes by it from the next box day on. Until cards are asked again it can be taken back; after that you
        can change to another chart, the former one too.
      </p>
      <p className="begin-row">
        <BusyButton className="primary" busy={change.isPending} onClick={() => void ask()}>
          Use this chart for my box
        </BusyButton>
      </p>
      {change.error ? <Trouble error={change.error} /> : null}
    </section>
  );
}
