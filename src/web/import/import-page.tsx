// Brings a list: choose it, see what it holds, accept it, watch it being saved. Nothing is saved before Accept.
import { useState } from "react";
import { PageHeading } from "../shell/page-heading.tsx";
import { ImportProgress } from "./import-progress.tsx";
import { ListChooser } from "./list-chooser.tsx";
import { useListDraft } from "./list-draft.ts";
import { ListPreview } from "./list-preview.tsx";
import "../styles/workshop.css";
import "../styles/import.css";

type Stage = { readonly kind: "choose" } | { readonly kind: "preview" | "saving"; readonly id: string };

/** The page of an import, from the list to the saved facts. */
export function ImportPage() {
  const [stage, setStage] = useState<Stage>({ kind: "choose" });
  const { list, change, clear } = useListDraft();
  const again = (): void => setStage({ kind: "choose" });
  return (
    <>
      <PageHeading title="Bring a list">Bring a list</PageHeading>
      {stage.kind === "choose" ? (
        <ListChooser list={list} change={change} opened={(id) => setStage({ kind: "preview", id })} />
      ) : null}
      {stage.kind === "preview" ? (
        <ListPreview
          id={stage.id}
          pictures={list.pictures}
          again={again}
          accepted={() => setStage({ kind: "saving", id: stage.id })}
        />
      ) : null}
      {stage.kind === "saving" ? <ImportProgress id={stage.id} again={again} saved={clear} /> : null}
    </>
  );
}
