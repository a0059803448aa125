// A sitting sheet read from photos: page by page, doubtful boxes shown enlarged, nothing given on before it is accepted.
import { useState } from "react";
import type { BoxCrop } from "../../../core/paper/photo/crop-box.ts";
import {
  addPage,
  answerDoubt,
  type Doubt,
  doubtsOf,
  EMPTY_DRAFT,
  headOf,
  missingPages,
  readingOf,
  type SheetDraft,
  type WantedSheet,
} from "../../../core/paper/photo/sheet-draft.ts";
import type { SheetReading } from "../../../core/paper/sheet-reading.ts";
import { DropZone } from "../../shell/drop-zone.tsx";
import { FilePick } from "../../shell/file-pick.tsx";
import { DoubtQuestion } from "./doubt-question.tsx";
import { type Refusal, refusalWords } from "./photo-words.ts";
import { ReadSummary } from "./read-summary.tsx";
import { usePhotoWorker } from "./use-photo-worker.ts";
import "../../styles/photo.css";

interface PhotoReaderProps {
  /** The box, and the day that is being entered; other sheets are refused. */
  readonly wanted: WantedSheet;
  /** Called once the person has accepted what the sheet says. */
  readonly onRead: (reading: SheetReading) => void;
}

/** Takes photos of a sitting sheet and gives its results. Photos never leave the browser. */
export function PhotoReader({ wanted, onRead }: PhotoReaderProps) {
  const { draft, crops, refused, busy, take, setDraft, reset } = useSheetDraft(wanted);
  const doubts = doubtsOf(draft);
  const open = doubts.findIndex(({ key }) => !draft.answers.has(key));
  const doubt = doubts[open];
  const crop = doubt && crops.get(doubt.page)?.get(doubt.at);
  const before: Doubt | undefined = doubts[open - 1];
  const reading = readingOf(draft);
  if (reading) {
    const accept = (): void => {
      reset();
      onRead(reading);
    };
    return <ReadSummary reading={reading} accept={accept} discard={reset} />;
  }
  return (
    <div className="photo-reader">
      {doubt && crop && !busy ? (
        <DoubtQuestion
          doubt={doubt}
          crop={crop}
          count={[open + 1, doubts.length]}
          answer={(marked) => setDraft(answerDoubt(draft, doubt.key, marked))}
          back={before ? () => setDraft(answerDoubt(draft, before.key, null)) : null}
        />
      ) : (
        <DropZone label="Photo of a sitting sheet" take={take}>
          <FilePick label={pickWords(draft)} accept="image/*" multiple take={take} />
          <span className="hint" role="status">
            {busy ? "Reading the photo" : progressWords(draft)}
          </span>
        </DropZone>
      )}
      {refused ? (
        <p className="field-problem" role="alert">
          {refusalWords(refused)}
        </p>
      ) : null}
    </div>
  );
}

const pickWords = (draft: SheetDraft): string =>
  headOf(draft) ? `Photo of page ${missingPages(draft)[0]}` : "Photo of the sheet";

function progressWords(draft: SheetDraft): string {
  const head = headOf(draft);
  if (!head) return "or drop it here. It is read on this device and goes nowhere else.";
  return `${head.pages - missingPages(draft).length} of ${head.pages} pages read.`;
}

type Crops = ReadonlyMap<number, ReadonlyMap<number, BoxCrop>>;

/** The sheet so far, the enlarged boxes of its pages, and why the last photo was refused. */
function useSheetDraft(wanted: WantedSheet) {
  const read = usePhotoWorker();
  const [draft, setDraft] = useState<SheetDraft>(EMPTY_DRAFT);
  const [crops, setCrops] = useState<Crops>(new Map());
  const [refused, setRefused] = useState<Refusal | null>(null);
  const [busy, setBusy] = useState(false);
  const takeOne = async (photo: File, sheet: SheetDraft): Promise<SheetDraft> => {
    const answer = await read(photo).catch(() => null);
    if (!answer) setRefused({ kind: "broken" });
    if (answer?.kind === "trouble") setRefused(answer.trouble);
    if (answer?.kind !== "read") return sheet;
    const added = addPage(sheet, answer.page, wanted);
    if (!added.ok) setRefused(added.error);
    if (!added.ok) return sheet;
    setCrops((known) => new Map(known).set(answer.page.head.page, answer.crops));
    setDraft(added.value);
    return added.value;
  };
  const take = async (files: Iterable<File>): Promise<void> => {
    if (busy) return;
    setBusy(true);
    setRefused(null);
    let sheet = draft;
    for (const photo of files) sheet = await takeOne(photo, sheet);
    setBusy(false);
  };
  const reset = (): void => {
    setDraft(EMPTY_DRAFT);
    setCrops(new Map());
    setRefused(null);
  };
  return { draft, crops, refused, busy, take: (files: Iterable<File>) => void take(files), setDraft, reset };
}
