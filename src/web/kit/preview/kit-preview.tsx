// The kit sheet by sheet as it will be printed, both sides.
import { type KeyboardEvent, useState } from "react";
import type { KitOrder } from "../../client.ts";
import { Trouble } from "../../shell/states.tsx";
import type { SettledDraft } from "../kit-draft.ts";
import { NoticeList } from "../notice-list.tsx";
import { SheetBar } from "./sheet-bar.tsx";
import { SheetSides } from "./sheet-sides.tsx";
import { type PreviewState, sheetCount } from "./use-preview.ts";

interface KitPreviewProps {
  /** Null while the choices cannot be printed. */
  readonly order: KitOrder | null;
  readonly draft: SettledDraft;
  readonly asked: PreviewState;
}

/** The sheets, one at a time. */
export function KitPreviewPanel({ order, draft, asked }: KitPreviewProps) {
  const { preview, sheet, look, fresh } = asked;
  const [zoom, setZoom] = useState(1);
  const shown = order && !preview.error ? preview.data : undefined;
  const parts = shown?.parts ?? [];
  const sheets = sheetCount(parts);
  const turnBy = (by: number): void => {
    if (shown) look(Math.min(Math.max(0, sheet + by), Math.max(0, sheets - 1)));
  };
  return (
    <section
      className="sheet kit-preview"
      aria-labelledby="preview"
      aria-busy={!fresh}
      onKeyDown={(event) => turnByKey(event, zoom, turnBy)}
    >
      <h2 id="preview">Preview</h2>
      <SheetBar {...{ sheet, sheets, parts, look, zoom, setZoom }} />
      {order === null ? <p>Mend what is marked among the choices; then the sheets appear here.</p> : null}
      {order && preview.error ? <Trouble error={preview.error} retry={() => void preview.refetch()} /> : null}
      <SheetSides preview={shown} zoom={zoom} fold={draft.turn === "fold"} />
      {shown ? <NoticeList title="On this sheet" notices={shown.notices} subjects={draft.subjects} /> : null}
    </section>
  );
}

/** Sheets are turned by the arrow keys wherever those do not move something else. */
function turnByKey(event: KeyboardEvent<HTMLElement>, zoom: number, turnBy: (by: number) => void): void {
  const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
  const target = event.target as HTMLElement;
  if (by === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
  if (["INPUT", "SELECT"].includes(target.tagName) || (zoom > 1 && target.classList.contains("kit-sides"))) return;
  event.preventDefault();
  turnBy(by);
}
