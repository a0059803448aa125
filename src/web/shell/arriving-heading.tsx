// The heading of a part that takes the place of another on the same page.
import { type ReactNode, useLayoutEffect, useRef } from "react";

/** A second heading that takes the focus when it appears, so that the next step is not missed. */
export function ArrivingHeading({ id, children }: { readonly id?: string; readonly children: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current?.focus(), []);
  return (
    <h2 ref={heading} id={id} tabIndex={-1}>
      {children}
    </h2>
  );
}
