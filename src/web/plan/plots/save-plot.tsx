// The two buttons under a plot that hand it out as files.
import type { RefObject } from "react";
import { BusyButton } from "../../shell/busy-button.tsx";
import { drawingFile, type Said } from "./drawing-file.ts";
import { saveFile } from "./save-file.ts";

/** Buttons to save the drawings within `plot`, and their figures, under `name`. */
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
    const drawings = [...(plot.current?.querySelectorAll<SVGSVGElement>("svg") ?? [])];
    if (drawings.length > 0) saveFile(`${name}.svg`, "image/svg+xml", drawingFile(drawings, said));
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
