// The heading of a page: names the window and takes the focus when the reader comes from another page.
import { type ReactNode, useEffect, useRef } from "react";

let opened = false;

/** The page's first heading. `title` names the window where the heading holds more than words. */
export function PageHeading({ children, title }: { readonly children: ReactNode; readonly title: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Longhold`;
  }, [title]);
  useEffect(() => {
    // The first page keeps the browser's own starting point.
    if (opened) heading.current?.focus({ preventScroll: true });
    opened = true;
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  );
}
