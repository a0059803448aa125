// What can be done to the facts that are ticked.
import { useState } from "react";
import type { SubjectView } from "../../../app/views.ts";
import type { Fact } from "../../../core/facts/fact.ts";
import { count, counted } from "../../words.ts";
import { FixDialog } from "./fix-dialog.tsx";
import { MergeDialog } from "./merge-dialog.tsx";
import { MoveDialog } from "./move-dialog.tsx";
import { ReplaceDialog } from "./replace-dialog.tsx";
import { TagsDialog } from "./tags-dialog.tsx";
import { useBulk } from "./use-bulk.ts";
import { type Chosen, chosenOf } from "./use-chosen.ts";
import type { FactFilter } from "./use-filter.ts";

interface BulkBarProps {
  readonly chosen: Chosen;
  readonly filter: FactFilter;
  /** How many facts fit the filter, and those of them that are on the page. */
  readonly total: number;
  readonly shown: readonly Fact[];
  readonly subjects: readonly SubjectView[];
}

type Doing = "fix" | "replace" | "tags" | "move" | "merge";

/** The bar above the table. */
export function BulkBar({ chosen, filter, total, shown, subjects }: BulkBarProps) {
  const [doing, setDoing] = useState<Doing | null>(null);
  const many = chosen.all ? total : chosen.facts.size;
  const { run, busy } = useBulk(chosen.clear);
  const order = chosenOf(chosen, filter);
  const dialog = { chosen: order, many, close: () => setDoing(null), done: chosen.clear };
  const ticked = shown.filter((fact) => chosen.facts.has(fact.id));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a bar of buttons is no set of fields
    <div className="bulk-bar" role="group" aria-label="Facts chosen">
      <span role="status">
        {many === 0 ? "Tick facts to change them together." : `${counted(many, "fact")} chosen`}
      </span>
      {total > shown.length || chosen.all ? (
        <button type="button" className="quiet" onClick={chosen.all ? chosen.clear : chosen.chooseAll}>
          {chosen.all ? "Choose none" : `Choose all ${count(total)}`}
        </button>
      ) : null}
      {many > 0 ? (
        <span className="row">
          {filter.note !== "" ? (
            <button type="button" onClick={() => setDoing("fix")}>
              Mend
            </button>
          ) : null}
          <button type="button" onClick={() => setDoing("replace")}>
            Replace words
          </button>
          <button type="button" onClick={() => setDoing("tags")}>
            Tags
          </button>
          {subjects.length > 1 ? (
            <button type="button" onClick={() => setDoing("move")}>
              Move
            </button>
          ) : null}
          {ticked.length > 1 && !chosen.all ? (
            <button type="button" onClick={() => setDoing("merge")}>
              Merge
            </button>
          ) : null}
          <button
            type="button"
            aria-disabled={busy || undefined}
            onClick={() => run({ chosen: order, change: { kind: "delete" } })}
          >
            Delete
          </button>
        </span>
      ) : null}
      {doing === "fix" ? <FixDialog {...dialog} rule={filter.note} /> : null}
      {doing === "replace" ? <ReplaceDialog {...dialog} /> : null}
      {doing === "tags" ? <TagsDialog {...dialog} /> : null}
      {doing === "move" ? (
        <MoveDialog {...dialog} subjects={subjects.filter(({ id }) => id !== filter.subject)} />
      ) : null}
      {doing === "merge" ? <MergeDialog {...dialog} facts={ticked} /> : null}
    </div>
  );
}
