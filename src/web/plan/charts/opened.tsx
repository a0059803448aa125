// A part that is folded away, and made only when it is wanted.
import { type ReactNode, useState } from "react";

/** Details whose content is built while they are open. */
export function Opened({ summary, children }: { readonly summary: string; readonly children: () => ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="opened" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {open ? children() : null}
    </details>
  );
}
