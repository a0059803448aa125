// What a list holds, before anything is saved: its first rows, what each column is, problems and cards.
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import type { ImportPreview } from "../../app/views.ts";
import { ApiError, api, type Choices } from "../client.ts";
import { ArrivingHeading } from "../shell/arriving-heading.tsx";
import { Loaded, Trouble } from "../shell/states.tsx";
import { counted } from "../words.ts";
import { AcceptPanel } from "./accept-panel.tsx";
import { CardsAhead } from "./cards-ahead.tsx";
import { choicesOf, withColumn } from "./column-names.ts";
import { HowRead } from "./how-read.tsx";
import { PreviewTable } from "./preview-table.tsx";
import { Problems } from "./problems.tsx";
import { useHome } from "./use-home.ts";

interface PreviewProps {
  readonly id: string;
  /** The pictures that came with the list. */
  readonly pictures: readonly File[];
  readonly again: () => void;
  readonly accepted: () => void;
}

const BUSY: ReadonlySet<string> = new Set(["conflict", "unreachable"]);

/** The preview of the list that the server holds under `id`. */
export function ListPreview({ id, pictures, again, accepted }: PreviewProps) {
  const [choices, setChoices] = useState<Choices>({});
  const { home, choose } = useHome();
  const wanted: Choices = home.id === null ? choices : { ...choices, subject: home.id };
  const preview = useQuery({
    queryKey: ["import", id, wanted],
    queryFn: ({ signal }) => api.previewImport(id, wanted, signal),
    placeholderData: keepPreviousData,
    // A list is read once at a time; what is asked meanwhile is asked again.
    retry: (failures, error) => failures < 3 && error instanceof ApiError && BUSY.has(error.kind),
    staleTime: Number.POSITIVE_INFINITY,
    refetchOnWindowFocus: false,
  });
  const accept = useDiscardUnaccepted(id, accepted);
  // What is chosen while the list is being read would be chosen for the reading before.
  const settle = (next: Choices): void => {
    if (!preview.isFetching) setChoices(next);
  };
  return (
    <>
      <Loaded query={preview} what="the list">
        {(shown) => (
          <div className="preview" aria-busy={preview.isFetching}>
            <ArrivingHeading>What the list holds</ArrivingHeading>
            {preview.error ? <Trouble error={preview.error} retry={() => setChoices({})} /> : null}
            <Counts preview={shown} />
            <HowRead preview={shown} change={(part) => settle({ ...kept(choices, part), ...part })} />
            <PreviewTable
              preview={shown}
              choose={(at, column) =>
                settle({
                  ...choices,
                  ...choicesOf(shown),
                  columns: withColumn(shown.columns, at, column),
                } as Choices)
              }
            />
            <Problems preview={shown} />
            <CardsAhead preview={shown} pictures={pictures} />
            <AcceptPanel
              id={id}
              preview={shown}
              busy={preview.isFetching}
              home={home}
              choose={choose}
              accepted={accept}
            />
          </div>
        )}
      </Loaded>
      <p>
        <button type="button" className="quiet" onClick={again}>
          Put this list away
        </button>
      </p>
    </>
  );
}

/** Puts the list away on the server when the reader leaves without accepting it. */
function useDiscardUnaccepted(id: string, accepted: () => void): () => void {
  const kept = useRef(false);
  useEffect(() => {
    const discard = (): void => {
      // Whatever comes of it, the server forgets unused lists by itself after a while.
      if (!kept.current) void api.stopImport(id).catch(() => undefined);
    };
    window.addEventListener("pagehide", discard);
    return () => {
      window.removeEventListener("pagehide", discard);
      discard();
    };
  }, [id]);
  return () => {
    kept.current = true;
    accepted();
  };
}

/** Reading a list otherwise moves its columns, so what was said of them no longer holds. */
function kept(choices: Choices, part: Choices): Choices {
  const { columns, ...rest } = choices;
  return part.header === undefined || columns === undefined ? rest : { ...rest, columns };
}

function Counts({ preview }: { readonly preview: ImportPreview }) {
  const odd = oddWords(preview);
  const figures = [
    { key: "good", text: `${counted(preview.good, "good row")}, ${counted(preview.cardCount, "card")}` },
    { key: "duplicates", text: `${counted(preview.duplicates, "duplicate")} skipped` },
    { key: "problems", text: `${counted(preview.rows - preview.good - preview.duplicates, "row")} with problems` },
  ];
  return (
    <>
      {odd ? <p className="lead">{odd}</p> : null}
      <ul className="counts" aria-label="Rows">
        {figures.map(({ key, text }) => (
          <li key={key} data-kind={key}>
            {text}
          </li>
        ))}
      </ul>
    </>
  );
}

/** What is to be said of a list that brings nothing and is not at fault. */
function oddWords({ rows, good, duplicates }: ImportPreview): string | null {
  if (rows === 0) return "The list is empty: below its headings there is no row. Put it away and bring another.";
  if (good > 0 || duplicates === 0) return null;
  return `Every ${duplicates === rows ? "" : "good "}row of this list is there already, so there is nothing new to save.`;
}
