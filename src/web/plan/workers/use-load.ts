// The load of a plan from its workers. While one works only the newest question waits, so a slider never falls behind.
import { startTransition, useEffect, useRef, useState } from "react";
import { ENOUGH_SETS } from "../../../core/load/mixed-load.ts";
import type { PlanDay, PlanQuestion } from "../../../core/load/plan-load.ts";
import type { Beta } from "../../../core/recall/beta.ts";
import type { LoadReply, LoadRequest } from "./load-worker.ts";
import type { LoadUnit, MixReply, MixRequest } from "./mix-worker.ts";

/** The newest load that was worked out. */
export interface Load {
  readonly question: PlanQuestion;
  readonly days: readonly PlanDay[];
  /** Whether it answers what is asked now. */
  readonly current: boolean;
  /** Whether its quantiles are still a card or so off, as they are while a slider moves. */
  readonly rough: boolean;
  /** Sets of chances of recall mixed into it; 0 where its bands hold chance alone. */
  readonly sets: number;
  /** Whether nothing better is to come. */
  readonly done: boolean;
}

/** The load, and whether a worker broke: a bug, or no memory. */
export interface Loading {
  /** Null until the first answer. */
  readonly load: Load | null;
  readonly failed: boolean;
}

/** The load of `question`. With `posterior` the bands of `unit` widen as sets of chances are mixed in. */
export function useLoad(question: PlanQuestion, posterior: readonly Beta[] | null, unit: LoadUnit = "cards"): Loading {
  const { answered, failed } = useKnownLoad(question);
  const exact = answered?.exact && answered.question === question;
  const mixing = useMixedLoad(exact ? question : null, posterior, unit);
  const { mixed } = mixing;
  // A mixture stays until there is a newer load, or the slider's first step would draw the old one without it.
  if (mixed && mixed.question === answered?.question && mixed.posterior === posterior && mixed.unit === unit) {
    const { days, sets } = mixed;
    const current = mixed.question === question;
    return {
      load: { question: mixed.question, days, current, rough: false, sets, done: sets >= ENOUGH_SETS },
      failed: failed || mixing.failed,
    };
  }
  const load = answered && {
    question: answered.question,
    days: answered.days,
    current: answered.question === question,
    rough: !answered.exact,
    sets: 0,
    done: answered.exact && posterior === null,
  };
  return { load, failed: failed || mixing.failed };
}

interface Answered extends LoadReply {
  readonly question: PlanQuestion;
}

/** The load for known chances of recall. */
function useKnownLoad(question: PlanQuestion) {
  const [answered, setAnswered] = useState<Answered | null>(null);
  const [failed, setFailed] = useState(false);
  const desk = useRef<Desk | null>(null);
  useEffect(() => {
    const own = createDesk(setAnswered, () => setFailed(true));
    desk.current = own;
    return () => own.close();
  }, []);
  useEffect(() => desk.current?.ask(question), [question]);
  return { answered, failed };
}

interface Mixed extends MixReply, MixRequest {}

/** How long a load stands before mixing begins: a hand on the slider should not have to share the machine with it. */
const MIX_PAUSE_MS = 500;

/** The mixture for `question`, begun anew whenever anything changes; a question of null rests. */
function useMixedLoad(question: PlanQuestion | null, posterior: readonly Beta[] | null, unit: LoadUnit) {
  const [mixed, setMixed] = useState<Mixed | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    if (!question || !posterior) return;
    const request: MixRequest = { question, posterior, unit };
    let worker: Worker | null = null;
    const timer = setTimeout(() => {
      worker = new Worker(new URL("./mix-worker.ts", import.meta.url), { type: "module" });
      // A better band makes way for a hand that takes the slider up again.
      worker.onmessage = (event: MessageEvent<MixReply>) =>
        startTransition(() => setMixed({ ...request, ...event.data }));
      worker.onerror = () => setFailed(true);
      worker.postMessage(request);
    }, MIX_PAUSE_MS);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [question, posterior, unit]);
  return { mixed, failed };
}

interface Desk {
  readonly ask: (question: PlanQuestion) => void;
  readonly close: () => void;
}

function createDesk(answer: (answered: Answered) => void, fail: () => void): Desk {
  const worker = new Worker(new URL("./load-worker.ts", import.meta.url), { type: "module" });
  let sent: LoadRequest | null = null;
  let next: LoadRequest | null = null;
  let answeredOnce = true;
  let ids = 0;
  const send = (): void => {
    // A first answer is never cut off: under a moving slider each one is shown.
    if (!next || !answeredOnce) return;
    sent = next;
    next = null;
    answeredOnce = false;
    worker.postMessage(sent);
  };
  worker.onmessage = (event: MessageEvent<LoadReply>) => {
    if (sent && event.data.id === sent.id) {
      answeredOnce = true;
      answer({ ...event.data, question: sent.question });
    }
    send();
  };
  worker.onerror = fail;
  return {
    ask: (question) => {
      next = { id: ++ids, question };
      send();
    },
    close: () => worker.terminate(),
  };
}
