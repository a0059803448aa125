// A plot that is read point by point, by pointer or by keyboard. To a screen reader it is a slider whose value is the
// point's own sentence, so that it is read as the cursor moves.
import type { KeyboardEvent, PointerEvent, ReactNode, RefObject } from "react";
import { cursorStep, type Row } from "./cursor-step.ts";

interface PlotCursorProps extends Row {
  readonly plot: RefObject<HTMLDivElement | null>;
  readonly label: string;
  /** The point the cursor stands on. */
  readonly at: number;
  /** What there is to say about it. */
  readonly words: string;
  /** The point that is nearest to a place, in CSS pixels from the left. */
  readonly nearest: (x: number) => number;
  readonly onMove: (at: number) => void;
  readonly busy?: boolean;
  readonly children: ReactNode;
}

/** Holds a drawing; arrows, Home, End, PageUp and PageDown, hovering and touching move the cursor. */
export function PlotCursor(props: PlotCursorProps) {
  const { plot, label, at, words, count, nearest, onMove, busy = false, children } = props;
  const onKeyDown = (event: KeyboardEvent): void => {
    const to = event.altKey || event.ctrlKey || event.metaKey ? null : cursorStep(event.key, at, props);
    if (to === null) return;
    event.preventDefault();
    onMove(to);
  };
  const onPointer = (event: PointerEvent): void => {
    const left = plot.current?.getBoundingClientRect().left ?? 0;
    onMove(Math.min(count - 1, Math.max(0, nearest(event.clientX - left))));
  };
  return (
    <div
      ref={plot}
      className="plot"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={1}
      aria-valuemax={Math.max(1, count)}
      aria-valuenow={at + 1}
      aria-valuetext={words}
      aria-busy={busy}
      onKeyDown={onKeyDown}
      onPointerDown={onPointer}
      onPointerMove={onPointer}
    >
      {children}
    </div>
  );
}
