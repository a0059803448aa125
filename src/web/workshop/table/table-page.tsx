// Many facts at once: looked for, changed in their cells or all together, and every change undone.
import { keepPreviousData, useInfiniteQuery } from "@tanstack/react-query";
import { useState } from "react";
import { Link } from "wouter";
import type { SubjectView } from "../../../app/views.ts";
import type { Fact } from "../../../core/facts/fact.ts";
import { api } from "../../client.ts";
import { KEYS, useSubjects } from "../../data/queries.ts";
import { useDebounced } from "../../data/use-debounced.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { PageHeading } from "../../shell/page-heading.tsx";
import { Loaded } from "../../shell/states.tsx";
import { counted } from "../../words.ts";
import { workshopAddress } from "../use-place.ts";
import { BulkBar } from "./bulk-bar.tsx";
import { DuplicatesDialog } from "./duplicates-dialog.tsx";
import { EditsPanel } from "./edits-panel.tsx";
import { FactTable } from "./fact-table.tsx";
import { FilterBar } from "./filter-bar.tsx";
import { useChosen } from "./use-chosen.ts";
import { ALL_SUBJECTS, type FactFilter, filterQuery, useFilter } from "./use-filter.ts";
import "../../styles/table.css";

const PAGE = 60;
const TYPING_MS = 250;

/** The table of facts. */
export function TablePage() {
  const subjects = useSubjects();
  return (
    <>
      <PageHeading title="Many facts at once">Many facts at once</PageHeading>
      <Loaded query={subjects} what="the subjects">
        {(all) => (all.length === 0 ? <NoFacts /> : <Table subjects={all} />)}
      </Loaded>
    </>
  );
}

const NoFacts = () => (
  <p className="lead">
    There is nothing to change yet. <Link href="/workshop">Write a first fact</Link>, or{" "}
    <Link href="/workshop/import">bring a list</Link>.
  </p>
);

function Table({ subjects }: { readonly subjects: readonly SubjectView[] }) {
  const [given, change] = useFilter();
  const subject = subjects.find((one) => one.id === given.subject) ?? subjects[0];
  const everywhere = given.subject === ALL_SUBJECTS;
  // Tags and notes belong to a subject.
  const filter: FactFilter = everywhere ? { ...given, tag: "", note: "" } : { ...given, subject: subject?.id ?? "" };
  const settled = useDebounced(JSON.stringify(filter), TYPING_MS);
  const chosen = useChosen(JSON.stringify(filter));
  const facts = useTable(JSON.parse(settled) as FactFilter);
  const [duplicates, setDuplicates] = useState(false);
  if (!subject) return null;
  return (
    <div className="many">
      <div className="row">
        <Link className="button quiet" href={workshopAddress({ subject: subject.id, fact: null })}>
          Back to the facts
        </Link>
        {everywhere ? null : (
          <button type="button" className="quiet" onClick={() => setDuplicates(true)}>
            Find duplicates
          </button>
        )}
      </div>
      <FilterBar subjects={subjects} filter={filter} change={change} />
      <Loaded query={facts} what="the facts">
        {({ pages }) => {
          const items = pages.flatMap((page) => page.items);
          const total = pages.at(-1)?.total ?? 0;
          return (
            <>
              <BulkBar chosen={chosen} filter={filter} total={total} shown={items} subjects={subjects} />
              <Found items={items} total={total} />
              {items.length > 0 ? <FactTable facts={items} chosen={chosen} /> : null}
              {facts.hasNextPage ? (
                <BusyButton busy={facts.isFetchingNextPage} onClick={() => void facts.fetchNextPage()}>
                  Load more
                </BusyButton>
              ) : null}
            </>
          );
        }}
      </Loaded>
      <EditsPanel />
      {duplicates ? <DuplicatesDialog subject={subject.id} close={() => setDuplicates(false)} /> : null}
    </div>
  );
}

function Found({ items, total }: { readonly items: readonly Fact[]; readonly total: number }) {
  const shown = items.length < total ? `, ${items.length} shown` : "";
  return (
    <p className="hint" role="status">
      {total === 0 ? "No fact fits. Take something out of the search." : `${counted(total, "fact")}${shown}`}
    </p>
  );
}

function useTable(filter: FactFilter) {
  return useInfiniteQuery({
    queryKey: [...KEYS.facts, "table", filter],
    queryFn: ({ pageParam }) => api.facts({ ...filterQuery(filter), after: pageParam ?? undefined, limit: PAGE }),
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.next,
    placeholderData: keepPreviousData,
  });
}
