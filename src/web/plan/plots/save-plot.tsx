// The two buttons under a plot that hand it out as files.
import type { RefObject } from "react";
import { BusyButton } from "../../shell/busy-button.tsx";
import { drawingFile, type Said } from "./drawing-file.ts";
import { saveFile } from "./save-file.ts";

/** Buttons to save the drawing within `plot`, and its figures, under `name`. */
export function SavePlot(props: {
  readonly plot: RefObject<HTMLElement | null>;
  readonly name: string;
  readonly said: Said;
  readonly csv: () => string;
  /** Whether the figures are still on their way. */
  readonly busy?: boolean;
}) {
  const { plot, name, said, csv, busy = false } = props;
  const saveDrawing = (): void => {
    const drawing = plot.current?.querySelector<SVGSVGElement>("svg");
    if (drawing) saveFile(`${name}.svg`, "image/svg+xml", drawingFile(drawing, said));
  };
  return (
    <>
      <BusyButton busy={busy} onClick={saveDrawing}>
        Save as SVG
      </BusyButton>
      <BusyButton busy={busy} onClick={() => saveFile(`${name}.csv`, "text/csv;charset=utf-8", csv())}>
        Save as CSV
      </BusyButton>
    </>
  );
}
