// One question at a time, asked in the browser's own dialog.
import { createContext, type ReactNode, useCallback, useContext, useState } from "react";
import { useModal } from "./use-modal.ts";

/** What is asked before something is done that cannot be undone. */
export interface Question {
  readonly title: string;
  readonly body: string;
  readonly yes: string;
  readonly no?: string;
  /** Whether going on loses something. */
  readonly careful?: boolean;
}

type Ask = (question: Question) => Promise<boolean>;

const Context = createContext<Ask>(() => Promise.resolve(false));

/** How a page asks; resolves with what was chosen. */
export const useConfirm = (): Ask => useContext(Context);

interface Pending extends Question {
  readonly answer: (yes: boolean) => void;
}

/** Holds the dialog for everything inside it. */
export function Confirming({ children }: { readonly children: ReactNode }) {
  const [pending, setPending] = useState<Pending | null>(null);
  const ask = useCallback<Ask>(
    (question) => new Promise((resolve) => setPending({ ...question, answer: resolve })),
    [],
  );
  const settle = (yes: boolean): void => {
    pending?.answer(yes);
    setPending(null);
  };
  return (
    <Context value={ask}>
      {children}
      {pending ? <QuestionDialog question={pending} settle={settle} /> : null}
    </Context>
  );
}

function QuestionDialog({
  question,
  settle,
}: {
  readonly question: Question;
  readonly settle: (yes: boolean) => void;
}) {
  const dialog = useModal();
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby="question" onCancel={() => settle(false)}>
      <h2 id="question">{question.title}</h2>
      <p dir="auto">{question.body}</p>
      <div className="row end">
        <button type="button" onClick={() => settle(false)}>
          {question.no ?? "Leave it"}
        </button>
        <button type="button" className={question.careful ? "careful" : "primary"} onClick={() => settle(true)}>
          {question.yes}
        </button>
      </div>
    </dialog>
  );
}
