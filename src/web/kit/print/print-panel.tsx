// Making the PDF, watching it, opening it, and saying that it was printed.
import { useEffect, useState } from "react";
import type { KitJobView } from "../../../app/print-views.ts";
import type { KitPart } from "../../../core/kit/kit-pages.ts";
import { type KitOrder, kitFileUrl } from "../../client.ts";
import { ArrivingHeading } from "../../shell/arriving-heading.tsx";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Trouble } from "../../shell/states.tsx";
import { counted } from "../../words.ts";
import type { SettledDraft } from "../kit-draft.ts";
import { bytesWords, kitWords, stepWords } from "../kit-words.ts";
import { NoticeList } from "../notice-list.tsx";
import type { PreviewState } from "../preview/use-preview.ts";
import { Recording } from "./recording.tsx";
import { type KitJob, orderText } from "./use-kit-job.ts";

interface PrintPanelProps {
  readonly job: KitJob;
  /** Null while the choices cannot be printed. */
  readonly order: KitOrder | null;
  readonly draft: SettledDraft;
  readonly zip: boolean;
  readonly asked: PreviewState;
  /** Told when cards were recorded as printed. */
  readonly printed: () => void;
}

/** What will be printed, one button, then what comes of it. */
export function PrintPanel({ job, order, draft, zip, asked, printed }: PrintPanelProps) {
  const { preview, fresh } = asked;
  const shown = order && !preview.error ? preview.data : undefined;
  const making = job.view?.state === "making";
  const ready = order !== null && fresh && shown !== undefined && shown.pages > 0 && !making && !job.busy;
  const words = useSettled(fresh && shown ? `${kitWords(shown, draft)}.` : null);
  const changed = order !== null && job.order !== orderText(order, zip);
  return (
    <section className="sheet kit-print" aria-label="Print kit">
      <div className="kit-print-head">
        <BusyButton className="big primary" busy={!ready} onClick={() => order && job.open(order, zip)}>
          Print kit
        </BusyButton>
        <div>
          <p className="kit-size" role="status">
            {order && !preview.error ? words : ""}
          </p>
          <p className="hint">Makes a PDF to be printed at “actual size”.</p>
        </div>
      </div>
      {job.error ? <Trouble error={job.error} /> : null}
      {job.view ? (
        <Made key={`${job.view.id} ${job.view.state}`} job={job} view={job.view} changed={changed} printed={printed} />
      ) : null}
    </section>
  );
}

/** The newest words that were certain: a preview under way would be that of other choices. */
function useSettled(words: string | null): string {
  const [said, say] = useState("");
  useEffect(() => {
    if (words !== null) say(words);
  }, [words]);
  return words ?? said;
}

interface MadeProps {
  readonly job: KitJob;
  readonly view: KitJobView;
  /** Whether the choices are not those it was made by. */
  readonly changed: boolean;
  readonly printed: () => void;
}

function Made({ job, view, changed, printed }: MadeProps) {
  switch (view.state) {
    case "making":
      return (
        <div className="kit-made">
          <progress
            aria-label="The PDF so far"
            {...(view.total > 0 && view.step !== "setting" ? { max: view.total, value: view.done } : {})}
          />
          <p role="status">{stepWords(view)} …</p>
          <button type="button" onClick={job.stop}>
            Stop
          </button>
        </div>
      );
    case "stopped":
      return <p role="status">Stopped: no PDF was made.</p>;
    case "failed":
      return (
        <div className="trouble" role="alert">
          <p dir="auto">{view.message}</p>
        </div>
      );
    case "done":
      return <Done job={job} view={view} changed={changed} printed={printed} />;
  }
}

function Done({ job, view, changed, printed }: MadeProps) {
  const zipped = view.file.endsWith(".zip");
  const calibration = job.parts.every((part) => part === "calibration");
  const what = calibration ? "calibration page" : zipped ? "zip file" : "PDF";
  const title = `The ${what} is ready${what === "PDF" ? `: ${counted(view.pages, "page")}` : ""}`;
  return (
    <div className="kit-made">
      {job.here ? <ArrivingHeading>{title}</ArrivingHeading> : <h2>{title}</h2>}
      {changed && view.recorded === null && !calibration ? (
        <p className="hint">The choices were changed since; press “Print kit” again for a PDF that follows them.</p>
      ) : null}
      <p className="row">
        {zipped ? null : (
          <a className="button" href={kitFileUrl(view.id)} target="_blank" rel="noreferrer">
            Open it to print
          </a>
        )}
        <a className="button" href={kitFileUrl(view.id, true)} download={view.file}>
          Download
        </a>
        <span className="hint" dir="auto">
          {view.file}, {bytesWords(view.bytes)}
        </span>
      </p>
      <NoticeList title="Not everything came out as it should" notices={view.notices} subjects={[]} />
      {calibration ? (
        <p>Print it on both sides, at “actual size”, then go on with step 2.</p>
      ) : (
        <Advice cut={job.parts.some((part) => CUT_PARTS.has(part))} />
      )}
      {view.recordable > 0 ? <Recording job={job} view={view} printed={printed} /> : null}
    </div>
  );
}

/** What is cut out. */
const CUT_PARTS: ReadonlySet<KitPart> = new Set(["cards", "dividers", "pocket"]);

/** What to mind with paper, printer and, if anything is cut out, blade in hand. */
const Advice = ({ cut }: { readonly cut: boolean }) => (
  <ul className="kit-advice">
    <li>Choose “actual size” or “100 %” in the print window, never “fit to page”. Try one sheet first.</li>
    {cut ? (
      <li>
        Scissors and knives are sharp: cut on a mat along a metal ruler, away from your fingers, and close or cover the
        blade when you put it down. Children cut with round-tipped scissors, and somebody grown up beside them.
      </li>
    ) : null}
    <li>
      Cards on paper do not change by themselves. Where safety depends on it, look it up in the official source before
      you act.
    </li>
  </ul>
);
