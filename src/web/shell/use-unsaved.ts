// Asks before what was not saved is left.
import { useCallback, useLayoutEffect, useRef } from "react";
import { useConfirm } from "./confirm.tsx";
import { useLeaveGuard } from "./guarded-location.ts";

/** Asks while something is unsaved; `left` is called when the reader leaves. `release` lets the next step pass. */
export function useUnsaved(dirty: boolean, left: () => void): { readonly release: () => void } {
  const confirm = useConfirm();
  const released = useRef(false);
  const onLeave = useRef(left);
  useLayoutEffect(() => {
    onLeave.current = left;
  });
  useLayoutEffect(() => {
    released.current = !dirty;
  }, [dirty]);
  const ask = useCallback(async () => {
    if (released.current) return true;
    const leave = await confirm({
      title: "Leave without saving?",
      body: "What you wrote here is not saved yet.",
      yes: "Leave without saving",
      no: "Stay",
      careful: true,
    });
    if (leave) onLeave.current();
    return leave;
  }, [confirm]);
  useLeaveGuard(dirty, ask);
  return {
    release: () => {
      released.current = true;
    },
  };
}
