// What the Plan page has worked out away from the page itself, so that it never stands still.
import { type DesignQuestion, designChart } from "../../../core/chart/design-chart.ts";
import { type LadderQuestion, searchLadders } from "../../../core/chart/search-ladders.ts";
import { affordablePace, type Limit } from "../../../core/load/affordable-pace.ts";
import { datedDays } from "../../../core/load/dated-days.ts";
import { type DeadlineQuestion, planDeadline } from "../../../core/load/deadline.ts";
import { type Plan, type PlanQuestion, planLoad, toBoxDays } from "../../../core/load/plan-load.ts";

/** A plan whose pace of new cards is what is asked for. */
export interface AffordQuestion extends Omit<Plan, "schedule" | "pace"> {
  readonly recall: readonly number[];
  readonly limit: Limit;
}

/** Each task takes data and gives data, so that both can travel to a worker and back. */
export const TASKS = {
  afford: (question: AffordQuestion) => {
    const days = datedDays(question);
    const plan = { ...question, pace: question.limit.pace, quantiles: [] };
    const paced = (each: number) => toBoxDays({ ...plan, schedule: { kind: "steady", each } }, days);
    const found = affordablePace(paced, question.limit);
    return { ...found, date: days.find(({ day }) => day !== null && day === found.worst?.day)?.date ?? null };
  },
  /** Means and spreads of several plans, without quantiles. */
  loads: (questions: readonly PlanQuestion[]) => questions.map((one) => planLoad({ ...one, quantiles: [] })),
  deadline: (question: DeadlineQuestion) => planDeadline(question),
  design: (question: DesignQuestion) => designChart(question),
  ladders: (question: LadderQuestion) => searchLadders(question),
} as const;

/** Name of a task. */
export type TaskName = keyof typeof TASKS;
/** What a task is given. */
export type TaskQuestion<N extends TaskName> = Parameters<(typeof TASKS)[N]>[0];
/** What it gives. */
export type TaskAnswer<N extends TaskName> = ReturnType<(typeof TASKS)[N]>;
