// Links ask before they lead away from unsaved work. Given to the router in place of its own location hook.
import { useCallback, useLayoutEffect } from "react";
import type { BaseLocationHook } from "wouter";
import { useBrowserLocation } from "wouter/use-browser-location";

type Guard = () => Promise<boolean>;

let guard: Guard | null = null;

/** The browser's location, changed only after the guard, if any, has let the reader go. */
export const useGuardedLocation: BaseLocationHook = () => {
  const [location, navigate] = useBrowserLocation();
  const guarded = useCallback(
    (to: string, options?: { readonly replace?: boolean }) => {
      const go = (): void => navigate(to, options);
      // Replacing the address, or going where one is, stays on the page.
      if (!guard || options?.replace || to === location) go();
      else void guard().then((leave) => leave && go());
    },
    [navigate, location],
  );
  return [location, guarded];
};

/** While `active`, links wait for `ask`, and closing the window is questioned by the browser. */
export function useLeaveGuard(active: boolean, ask: Guard): void {
  useLayoutEffect(() => {
    if (!active) return;
    guard = ask;
    const onClose = (event: BeforeUnloadEvent): void => event.preventDefault();
    window.addEventListener("beforeunload", onClose);
    return () => {
      guard = null;
      window.removeEventListener("beforeunload", onClose);
    };
  }, [active, ask]);
}
