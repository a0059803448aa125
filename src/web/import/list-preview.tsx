// What a list holds, before anything is saved: its first rows, what each column is, problems and cards.
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import type { ImportPreview } from "../../app/views.ts";
import { CardPair } from "../cards/card-pair.tsx";
import { api, type Choices } from "../client.ts";
import { Loaded, Trouble } from "../shell/states.tsx";
import { counted } from "../words.ts";
import { AcceptPanel } from "./accept-panel.tsx";
import { choicesOf, withColumn } from "./column-names.ts";
import { HowRead } from "./how-read.tsx";
import { PreviewTable } from "./preview-table.tsx";
import { Problems } from "./problems.tsx";

interface PreviewProps {
  readonly id: string;
  readonly again: () => void;
  readonly accepted: () => void;
}

/** The preview of the list that the server holds under `id`. */
export function ListPreview({ id, again, accepted }: PreviewProps) {
  const [choices, setChoices] = useState<Choices>({});
  const preview = useQuery({
    queryKey: ["import", id, choices],
    queryFn: () => api.previewImport(id, choices),
    placeholderData: keepPreviousData,
    staleTime: Number.POSITIVE_INFINITY,
    refetchOnWindowFocus: false,
  });
  const accept = useDiscardUnaccepted(id, accepted);
  return (
    <>
      <Loaded query={preview} what="the list">
        {(shown) => (
          <div className="preview" aria-busy={preview.isFetching}>
            {preview.error ? <Trouble error={preview.error} retry={() => setChoices({})} /> : null}
            <Counts preview={shown} />
            <HowRead
              preview={shown}
              busy={preview.isFetching}
              change={(part) => setChoices({ ...kept(choices, part), ...part })}
            />
            <PreviewTable
              preview={shown}
              busy={preview.isFetching}
              choose={(at, column) =>
                setChoices({
                  ...choices,
                  ...choicesOf(shown),
                  columns: withColumn(shown.columns, at, column),
                } as Choices)
              }
            />
            <Problems preview={shown} />
            <CardsAhead preview={shown} />
            <AcceptPanel
              id={id}
              preview={shown}
              busy={preview.isFetching}
              home={choices.subject}
              setHome={(subject) => setChoices({ ...choices, subject })}
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
  const figures = [
    { key: "good", text: `${counted(preview.good, "good row")}, ${counted(preview.cardCount, "card")}` },
    { key: "duplicates", text: `${counted(preview.duplicates, "duplicate")} skipped` },
    { key: "problems", text: `${counted(preview.rows - preview.good - preview.duplicates, "row")} with problems` },
  ];
  return (
    <ul className="counts" aria-label="What the list holds">
      {figures.map(({ key, text }) => (
        <li key={key} data-kind={key}>
          {text}
        </li>
      ))}
    </ul>
  );
}

function CardsAhead({ preview }: { readonly preview: ImportPreview }) {
  if (preview.cards.length === 0) return null;
  return (
    <section aria-labelledby="cards-ahead">
      <h2 id="cards-ahead">The first cards, as they will look</h2>
      <div className="cards-ahead">
        {preview.cards.slice(0, 4).map((card) => (
          <CardPair key={card.id} card={card} />
        ))}
      </div>
    </section>
  );
}
