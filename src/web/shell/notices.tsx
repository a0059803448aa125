// Short notices at the foot of the window, read out politely, with Undo where there is something to undo.
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from "react";

interface Notice {
  readonly id: number;
  readonly text: string;
  readonly undo: (() => void) | null;
}

type Notify = (text: string, undo?: () => void) => void;

const NOTICE_MS = 5_000;
const UNDO_MS = 12_000;
const Context = createContext<Notify>(() => undefined);

/** How a page says that something was done. */
export const useNotify = (): Notify => useContext(Context);

/** Holds the notices of everything inside it. */
export function Notices({ children }: { readonly children: ReactNode }) {
  const [notices, setNotices] = useState<readonly Notice[]>([]);
  const next = useRef(1);
  const notify = useCallback<Notify>((text, undo) => {
    const notice = { id: next.current++, text, undo: undo ?? null };
    // One thing to undo and the latest news; more would cover the page.
    setNotices((all) => [...all.filter((one) => one.undo).slice(-1), notice]);
  }, []);
  const dismiss = useCallback((id: number) => setNotices((all) => all.filter((notice) => notice.id !== id)), []);
  const region = useMemo(
    () => (
      <div className="notices" role="status" aria-live="polite">
        {notices.map((notice) => (
          <NoticeSlip key={notice.id} notice={notice} dismiss={dismiss} />
        ))}
      </div>
    ),
    [notices, dismiss],
  );
  return (
    <Context value={notify}>
      {children}
      {region}
    </Context>
  );
}

function NoticeSlip({ notice, dismiss }: { readonly notice: Notice; readonly dismiss: (id: number) => void }) {
  const [held, setHeld] = useState(false);
  useEffect(() => {
    if (held) return;
    const timer = setTimeout(() => dismiss(notice.id), notice.undo ? UNDO_MS : NOTICE_MS);
    return () => clearTimeout(timer);
  }, [held, dismiss, notice]);
  const undo = (): void => {
    notice.undo?.();
    dismiss(notice.id);
  };
  return (
    // Pointing at a notice or moving into it keeps it on the screen.
    // biome-ignore lint/a11y/useSemanticElements: a notice is no set of fields
    <div
      role="group"
      aria-label="Notice"
      className="notice"
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <span dir="auto">{notice.text}</span>
      {notice.undo ? (
        <button type="button" className="quiet" onClick={undo}>
          Undo
        </button>
      ) : null}
      <button type="button" className="quiet icon" aria-label="Close this notice" onClick={() => dismiss(notice.id)}>
        ×
      </button>
    </div>
  );
}
