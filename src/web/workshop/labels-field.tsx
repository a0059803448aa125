// The labelled parts of a picture: drawn on it with a pointer, or set by keyboard; each with its name.
import { type PointerEvent, useRef, useState } from "react";
import type { PictureLabel, Region } from "../../core/facts/fact.ts";
import { pictureUrl } from "../client.ts";
import { movedRegion, placedRegion, regionBetween } from "./region-geometry.ts";

interface LabelsProps {
  readonly picture: string;
  readonly labels: readonly PictureLabel[];
  readonly set: (labels: readonly PictureLabel[]) => void;
}

/** Labels as they were before a change, and what it was about. */
interface Past {
  readonly labels: readonly PictureLabel[];
  readonly what: string;
}

/** Where a region is put that is added by keyboard. */
const MIDDLE: Region = { x: 0.4, y: 0.4, width: 0.2, height: 0.2 };

/** The picture with its regions, and a row for each below. */
export function LabelsField({ picture, labels, set }: LabelsProps) {
  const frame = useRef<HTMLDivElement>(null);
  const [drawn, setDrawn] = useState<{ readonly from: readonly [number, number]; readonly region: Region } | null>(
    null,
  );
  const [held, setHeld] = useState<{ readonly number: number; readonly from: readonly [number, number] } | null>(null);
  const [past, setPast] = useState<readonly Past[]>([]);
  // Letters of one name, and steps of one region, are undone together.
  const change = (next: readonly PictureLabel[], what = ""): void => {
    if (what === "" || past.at(-1)?.what !== what) setPast([...past, { labels, what }]);
    set(next);
  };
  const undo = (): void => {
    const last = past.at(-1);
    if (!last) return;
    set(last.labels);
    setPast(past.slice(0, -1));
  };
  const add = (region: Region): void => {
    const number = Math.max(0, ...labels.map((label) => label.number)) + 1;
    change([...labels, { ...region, number, name: "" }]);
  };
  const at = (event: PointerEvent): readonly [number, number] => {
    const box = frame.current?.getBoundingClientRect();
    return box ? [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height] : [0, 0];
  };
  const begin = (event: PointerEvent): void => {
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    setDrawn({ from: at(event), region: regionBetween(at(event), at(event)) });
  };
  const finish = (): void => {
    if (drawn && drawn.region.width > 0.01 && drawn.region.height > 0.01) add(drawn.region);
    setDrawn(null);
  };
  const edit = (number: number, part: Partial<PictureLabel>): void =>
    change(
      labels.map((label) => (label.number === number ? { ...label, ...part } : label)),
      `${number} ${"name" in part ? "name" : "place"}`,
    );
  return (
    <fieldset className="labels-field">
      <legend>Labels</legend>
      <p className="hint">
        Draw a rectangle over each part that is to be asked, or add one and move it with the arrow keys; with Shift they
        change its size.
      </p>
      <div
        ref={frame}
        className="labels-frame"
        onPointerDown={begin}
        onPointerMove={(event) => drawn && setDrawn({ ...drawn, region: regionBetween(drawn.from, at(event)) })}
        onPointerUp={finish}
        onPointerCancel={() => setDrawn(null)}
      >
        <img src={pictureUrl(picture)} alt="To be labelled" draggable={false} />
        {labels.map((label) => (
          <button
            key={label.number}
            type="button"
            className="label-region"
            style={shares(label)}
            aria-label={`Region of ${label.name || `label ${label.number}`}`}
            onPointerDown={(event) => {
              event.stopPropagation();
              event.currentTarget.setPointerCapture(event.pointerId);
              const [x, y] = at(event);
              setHeld({ number: label.number, from: [x - label.x, y - label.y] });
            }}
            onPointerMove={(event) => {
              if (held?.number !== label.number) return;
              const [x, y] = at(event);
              edit(label.number, placedRegion(label, [x - held.from[0], y - held.from[1]]));
            }}
            onPointerUp={() => setHeld(null)}
            onKeyDown={(event) => {
              const moved = movedRegion(label, event.key, event.shiftKey);
              if (!moved) return;
              event.preventDefault();
              edit(label.number, moved);
            }}
          >
            {label.name || label.number}
          </button>
        ))}
        {drawn ? <span className="label-region" style={shares(drawn.region)} /> : null}
      </div>
      <ul>
        {labels.map((label) => (
          <li key={label.number} className="row">
            <label className="field inline">
              <span>Name of label {label.number}</span>
              <input
                dir="auto"
                value={label.name}
                onChange={(event) => edit(label.number, { name: event.target.value })}
              />
            </label>
            <button
              type="button"
              className="quiet"
              aria-label={`Remove label ${label.name || label.number}`}
              onClick={() => change(labels.filter((one) => one.number !== label.number))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <span className="row">
        <button type="button" onClick={() => add(MIDDLE)}>
          Add a label
        </button>
        <button type="button" className="quiet" disabled={past.length === 0} onClick={undo}>
          Undo
        </button>
      </span>
    </fieldset>
  );
}

const shares = ({ x, y, width, height }: Region) => ({
  left: `${100 * x}%`,
  top: `${100 * y}%`,
  width: `${100 * width}%`,
  height: `${100 * height}%`,
});
