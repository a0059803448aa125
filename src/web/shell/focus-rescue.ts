// Where the focus goes when the thing that had it is taken from the page.
import { type RefObject, useEffect } from "react";

/** Keeps the focus inside a region: what is nearest to the vanished thing gets it, a heading first. */
export function useFocusRescue(region: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const watched = region.current;
    if (!watched) return;
    let path: readonly Element[] = [];
    const note = (event: FocusEvent): void => {
      path = event.target instanceof Element ? pathOf(event.target, watched) : [];
    };
    const rescue = (): void => {
      const [last] = path;
      if (!last || last.isConnected || (document.activeElement ?? document.body) !== document.body) return;
      const home = path.find((element) => element.isConnected) ?? watched;
      path = [];
      focusWithin(home, watched);
    };
    const forget = ({ target }: PointerEvent): void => {
      // Whoever points elsewhere has left the place by intention.
      if (!(target instanceof Node && path[0]?.contains(target))) path = [];
    };
    watched.addEventListener("focusin", note);
    document.addEventListener("pointerdown", forget);
    const observer = new MutationObserver(rescue);
    observer.observe(watched, { childList: true, subtree: true });
    return () => {
      watched.removeEventListener("focusin", note);
      document.removeEventListener("pointerdown", forget);
      observer.disconnect();
    };
  }, [region]);
}

/** The focused element and what it lies in, innermost first. */
function pathOf(element: Element, end: Element): readonly Element[] {
  const path: Element[] = [];
  for (let at: Element | null = element; at && at !== end; at = at.parentElement) path.push(at);
  return path;
}

/** Focuses the nearest heading or legend around `home`, or else the whole region. */
function focusWithin(home: Element, region: HTMLElement): void {
  for (let at: Element | null = home; at; at = at === region ? null : at.parentElement) {
    const heading = at.querySelector<HTMLElement>("h1, h2, h3, legend, summary");
    if (!heading) continue;
    focusOn(heading);
    return;
  }
  region.focus({ preventScroll: true });
}

/** Focuses an element that is not reached by Tab, such as a heading. */
export function focusOn(element: HTMLElement | null | undefined): void {
  if (!element) return;
  if (!element.hasAttribute("tabindex")) element.tabIndex = -1;
  element.focus({ preventScroll: true });
}
