// What the designer found, how sure it is, and what can be done with it.

import { cycleLength } from "../../../core/chart/chart.ts";
import { type Design, type DesignQuestion, defaultBudget } from "../../../core/chart/design-chart.ts";
import { counted } from "../../words.ts";
import type { Task } from "../workers/use-task.ts";
import { chartKey, type NamedChart } from "./compared-charts.ts";
import { designWords } from "./design-words.ts";

/** What a designed chart is called. */
export const namedDesign = ({ tabs, chart }: Design): NamedChart => ({
  name: `Designed, ${counted(tabs, "tab")}`,
  chart,
});

/** How many times as many charts are tried when somebody wants to be surer. */
const LONGER = 10;

interface DesignAnswerProps {
  readonly task: Task<"design">;
  /** What was asked last. */
  readonly asked: DesignQuestion | null;
  readonly pace: number;
  readonly pick: (picked: NamedChart) => void;
  /** Key of the chart that is planned with. */
  readonly planned: string;
  readonly again: (question: DesignQuestion) => void;
}

/** The answer in words, read out when it comes; nothing before there is one. */
export function DesignAnswer(props: DesignAnswerProps) {
  const { task, asked } = props;
  const answer = task.busy || task.failed || asked === null ? null : task.answer;
  return (
    <>
      <div role="status" className="design-answer">
        {answer?.ok && asked ? <AnswerWords {...props} design={answer.value} asked={asked} /> : null}
      </div>
      {answer?.ok && asked ? <NextSteps {...props} design={answer.value} asked={asked} /> : null}
      {task.failed ? (
        <p className="trouble" role="alert">
          The search broke off. Try again; if it does so once more, with fewer compartments.
        </p>
      ) : null}
      {answer?.ok === false ? (
        <p className="trouble" role="alert">
          No chart: {answer.error}.
        </p>
      ) : null}
    </>
  );
}

interface AnsweredProps extends DesignAnswerProps {
  readonly design: Design;
  readonly asked: DesignQuestion;
}

function AnswerWords({ design, asked, pace }: AnsweredProps) {
  const [found, proof] = designWords(design, asked.tabs, pace);
  return (
    <>
      <p>
        <strong>{found}</strong>
      </p>
      <p>{proof} It stands beside the other charts above.</p>
    </>
  );
}

function NextSteps({ design, asked, pick, planned, again }: AnsweredProps) {
  const budget = (asked.budget ?? defaultBudget(cycleLength(design.chart))) * LONGER;
  const chosen = chartKey(design.chart) === planned;
  return (
    <p className="row">
      <button type="button" aria-pressed={chosen} onClick={() => pick(namedDesign(design))}>
        {chosen ? "Planned with this chart" : "Plan with this chart"}
      </button>
      {design.exact ? null : (
        <button type="button" onClick={() => again({ ...asked, budget })}>
          Look ten times as long
        </button>
      )}
    </p>
  );
}
