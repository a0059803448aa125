// A button whose work takes a moment.
import type { ButtonHTMLAttributes } from "react";

interface BusyButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** Whether pressing it does nothing just now. */
  readonly busy: boolean;
}

/** A button that keeps the focus while it is busy, which a disabled one would lose. */
export function BusyButton({ busy, onClick, type = "button", ...rest }: BusyButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-disabled={busy ? true : undefined}
      onClick={(event) => {
        if (busy) event.preventDefault();
        else onClick?.(event);
      }}
    />
  );
}
