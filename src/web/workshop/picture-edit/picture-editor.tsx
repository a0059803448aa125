// Draws on a picture or a blank sheet, turns it and cuts it, by pointer and by keyboard; nothing counts before Done.
import { type KeyboardEvent, type PointerEvent, useEffect, useId, useRef, useState } from "react";
import type { Region } from "../../../core/facts/fact.ts";
import { useConfirm } from "../../shell/confirm.tsx";
import { useModal } from "../../shell/use-modal.ts";
import { regionBetween } from "../region-geometry.ts";
import { CropFields } from "./crop-fields.tsx";
import {
  cropStep,
  type Drawing,
  NEW_DRAWING,
  type PenPoint,
  redone,
  type Step,
  sizeAfter,
  undone,
  withStep,
} from "./drawing.ts";
import { type Ground, paint } from "./paint.ts";

interface EditorProps {
  readonly ground: Ground;
  readonly done: (picture: Blob) => void;
  readonly close: () => void;
}

type Tool = "pen" | "eraser" | "cut";

const INKS = { black: "#1d2521", blue: "#1d4f91", red: "#a3311d", green: "#1d5a4b" } as const;
const WIDTHS = { thin: 5, medium: 11, thick: 24 } as const;
const ERASER = 3;
/** How far an arrow key moves the pen, as a share of the picture's width. */
const KEY_STEP = 0.02;

/** The dialog with the sheet and its tools. */
export function PictureEditor({ ground, done, close }: EditorProps) {
  const dialog = useModal();
  const id = useId();
  const confirm = useConfirm();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [drawing, setDrawing] = useState<Drawing>(NEW_DRAWING);
  const [stroke, setStroke] = useState<readonly PenPoint[] | null>(null);
  const [pen, setPen] = useState<{ readonly at: readonly [number, number]; readonly down: boolean } | null>(null);
  const [tool, setTool] = useState<Tool>("pen");
  const [ink, setInk] = useState<keyof typeof INKS>("black");
  const [width, setWidth] = useState<keyof typeof WIDTHS>("medium");
  const size = sizeAfter(ground.size, drawing.steps);
  const strokeOf = (points: readonly PenPoint[]): Step => ({
    kind: "stroke",
    points,
    width: WIDTHS[width] * (tool === "eraser" ? ERASER : 1),
    ink: tool === "eraser" ? null : INKS[ink],
  });
  const cutting = tool === "cut" && stroke ? regionOf(stroke, size) : null;
  useEffect(() => {
    const open = stroke && tool !== "cut" ? [...drawing.steps, strokeOf(stroke)] : drawing.steps;
    if (canvas.current) paint(canvas.current, ground, open);
  });
  const add = (step: Step | null): void => {
    if (step) setDrawing(withStep(drawing, step));
  };
  const finish = (points = stroke): void => {
    if (points && points.length > 0) add(tool === "cut" ? cropStep(size, regionOf(points, size)) : strokeOf(points));
    setStroke(null);
  };
  const at = (event: PointerEvent): PenPoint => {
    const box = event.currentTarget.getBoundingClientRect();
    const share = [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height] as const;
    return [share[0] * size[0], share[1] * size[1], event.pressure === 0 ? 0.5 : event.pressure];
  };
  const leave = async (): Promise<void> => {
    const ask = {
      title: "Throw the drawing away?",
      body: "It has not been kept yet.",
      yes: "Throw it away",
      no: "Go on drawing",
      careful: true,
    };
    if (drawing.steps.length === 0 || (await confirm(ask))) close();
  };
  const onKey = (event: KeyboardEvent): void => {
    const moved = movedPen(event.key, pen?.at ?? [size[0] / 2, size[1] / 2], size);
    if (moved) {
      setPen({ at: moved, down: pen?.down ?? false });
      if (pen?.down) setStroke([...(stroke ?? []), [...moved, 0.5]]);
    } else if (event.key === " ") {
      const place = pen?.at ?? ([size[0] / 2, size[1] / 2] as const);
      if (pen?.down) finish();
      else setStroke([[...place, 0.5]]);
      setPen({ at: place, down: !pen?.down });
    } else return;
    event.preventDefault();
  };
  const onShortcut = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    setDrawing(event.shiftKey ? redone(drawing) : undone(drawing));
  };
  const keep = (): void => canvas.current?.toBlob((blob) => blob && done(blob), "image/png");
  return (
    <dialog
      ref={dialog}
      className="dialog picture-editor"
      aria-labelledby={id}
      onKeyDown={onShortcut}
      onCancel={(event) => {
        event.preventDefault();
        void leave();
      }}
    >
      <h2 id={id}>Draw and cut</h2>
      <div className="editor-sheet">
        {/* biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: it is drawn on by keys, which no other role allows */}
        <canvas
          ref={canvas}
          tabIndex={0}
          role="application"
          aria-label="The sheet. Arrow keys move the pen, Space puts it down and lifts it."
          onKeyDown={onKey}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            setStroke([at(event)]);
          }}
          onPointerMove={(event) => stroke && !pen?.down && setStroke([...stroke, at(event)])}
          onPointerUp={() => finish()}
          onPointerCancel={() => setStroke(null)}
        />
        {cutting ? (
          <span
            className="cut-frame"
            style={{
              left: `${100 * cutting.x}%`,
              top: `${100 * cutting.y}%`,
              width: `${100 * cutting.width}%`,
              height: `${100 * cutting.height}%`,
            }}
          />
        ) : null}
        {pen ? (
          <span
            className="pen-mark"
            data-down={pen.down ? "" : undefined}
            style={{ left: `${(100 * pen.at[0]) / size[0]}%`, top: `${(100 * pen.at[1]) / size[1]}%` }}
          />
        ) : null}
      </div>
      <div className="row">
        <Choice label="Tool" value={tool} options={["pen", "eraser", "cut"]} set={setTool} />
        <Choice label="Ink" value={ink} options={Object.keys(INKS) as (keyof typeof INKS)[]} set={setInk} />
        <Choice label="Width" value={width} options={Object.keys(WIDTHS) as (keyof typeof WIDTHS)[]} set={setWidth} />
        <button type="button" disabled={drawing.steps.length === 0} onClick={() => setDrawing(undone(drawing))}>
          Undo
        </button>
        <button type="button" disabled={drawing.undone.length === 0} onClick={() => setDrawing(redone(drawing))}>
          Redo
        </button>
        <button type="button" onClick={() => add({ kind: "turn", clockwise: false })}>
          Turn left
        </button>
        <button type="button" onClick={() => add({ kind: "turn", clockwise: true })}>
          Turn right
        </button>
      </div>
      <CropFields crop={(part) => add(cropStep(size, part))} />
      <div className="row end">
        <button type="button" onClick={() => void leave()}>
          Cancel
        </button>
        <button type="button" className="primary" onClick={keep}>
          Done
        </button>
      </div>
    </dialog>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly T[];
  readonly set: (value: T) => void;
}

function Choice<T extends string>({ label, value, options, set }: ChoiceProps<T>) {
  return (
    <label className="field inline">
      <span>{label}</span>
      <select value={value} onChange={(event) => set(event.target.value as T)}>
        {options.map((option) => (
          <option key={option} value={option}>
            {option}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The part of the picture between the first point and the last. */
function regionOf(points: readonly PenPoint[], [width, height]: readonly [number, number]): Region {
  const share = ([x, y]: PenPoint): readonly [number, number] => [x / width, y / height];
  const [first = [0, 0, 0], last = first] = [points[0], points.at(-1)];
  return regionBetween(share(first), share(last));
}

function movedPen(
  key: string,
  [x, y]: readonly [number, number],
  [width, height]: readonly [number, number],
): readonly [number, number] | null {
  const step = KEY_STEP * width;
  const moves: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [-step, 0],
    ArrowRight: [step, 0],
    ArrowUp: [0, -step],
    ArrowDown: [0, step],
  };
  const move = moves[key];
  if (!move) return null;
  return [Math.min(width, Math.max(0, x + move[0])), Math.min(height, Math.max(0, y + move[1]))];
}
