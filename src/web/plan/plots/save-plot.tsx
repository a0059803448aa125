// The two buttons under a plot that hand it out as files.
import type { RefObject } from "react";
import { drawingFile, type Said } from "./drawing-file.ts";
import { saveFile } from "./save-file.ts";

/** Buttons to save the drawing within `plot`, and its figures, under `name`. */
export function SavePlot(props: {
  readonly plot: RefObject<HTMLElement | null>;
  readonly name: string;
  readonly said: Said;
  readonly csv: () => string;
}) {
  const { plot, name, said, csv } = props;
  const saveDrawing = (): void => {
    const drawing = plot.current?.querySelector<SVGSVGElement>("svg");
    if (drawing) saveFile(`${name}.svg`, "image/svg+xml", drawingFile(drawing, said));
  };
  return (
    <>
      <button type="button" onClick={saveDrawing}>
        Save as SVG
      </button>
      <button type="button" onClick={() => saveFile(`${name}.csv`, "text/csv;charset=utf-8", csv())}>
        Save as CSV
      </button>
    </>
  );
}
