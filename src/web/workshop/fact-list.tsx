// The facts of a subject in a list with search, a page at a time.
import { keepPreviousData, useInfiniteQuery } from "@tanstack/react-query";
import { useState } from "react";
import { Link } from "wouter";
import type { SubjectView } from "../../app/views.ts";
import type { Fact } from "../../core/facts/fact.ts";
import { api, pictureUrl } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { useDebounced } from "../data/use-debounced.ts";
import { Loaded } from "../shell/states.tsx";
import { counted } from "../words.ts";
import { workshopAddress } from "./use-place.ts";

const PAGE = 60;
const TYPING_MS = 250;

/** Facts to choose from; `open` is the one that lies open. */
export function FactList({ subject, open }: { readonly subject: SubjectView; readonly open: string | null }) {
  const [search, setSearch] = useState("");
  const [tag, setTag] = useState("");
  const wanted = useDebounced(`${search}\n${tag}`, TYPING_MS);
  const facts = useFacts(subject.id, wanted);
  return (
    <section className="fact-list" aria-label="Facts">
      <div className="search-row">
        <label className="field">
          <span>Search</span>
          <input type="search" dir="auto" value={search} onChange={(event) => setSearch(event.target.value)} />
        </label>
        <label className="field tag-field">
          <span>Tag</span>
          <input dir="auto" value={tag} onChange={(event) => setTag(event.target.value)} />
        </label>
      </div>
      <Loaded query={facts} what="the facts">
        {({ pages }) => {
          const items = pages.flatMap((page) => page.items);
          const total = pages.at(-1)?.total ?? 0;
          return (
            <>
              <p className="hint" role="status">
                {total === 0
                  ? nothingWords(wanted)
                  : `${counted(total, "fact")}${items.length < total ? `, ${items.length} shown` : ""}`}
              </p>
              <ul>
                {items.map((fact) => (
                  <FactRow key={fact.id} fact={fact} here={fact.id === open} />
                ))}
              </ul>
              {facts.hasNextPage ? (
                <button type="button" disabled={facts.isFetchingNextPage} onClick={() => facts.fetchNextPage()}>
                  Load more
                </button>
              ) : null}
            </>
          );
        }}
      </Loaded>
    </section>
  );
}

function useFacts(subject: string, wanted: string) {
  const [search = "", tag = ""] = wanted.split("\n").map((part) => part.trim());
  return useInfiniteQuery({
    queryKey: [...KEYS.facts, subject, search, tag],
    queryFn: ({ pageParam }) => api.facts({ subject, search, tag, after: pageParam ?? undefined, limit: PAGE }),
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.next,
    placeholderData: keepPreviousData,
  });
}

const nothingWords = (wanted: string): string =>
  wanted.trim() === "" ? "No facts yet. Write the first one." : "No fact fits. Try fewer letters.";

function FactRow({ fact, here }: { readonly fact: Fact; readonly here: boolean }) {
  return (
    <li>
      <Link
        href={workshopAddress({ subject: fact.subject, fact: fact.id })}
        className="fact-row"
        aria-current={here ? "true" : undefined}
      >
        {fact.picture ? <img src={pictureUrl(fact.picture)} alt="" loading="lazy" /> : null}
        <span className="fact-words" dir="auto">
          <FactWords fact={fact} />
        </span>
        <span className="fact-cards">{counted(fact.angles.length, "card")}</span>
      </Link>
    </li>
  );
}

function FactWords({ fact }: { readonly fact: Fact }) {
  switch (fact.kind) {
    case "pair":
      return (
        <>
          <strong>{fact.prompt}</strong> <span className="fact-answer">{fact.answer}</span>
        </>
      );
    case "statement":
      return fact.statement;
    case "picture":
      return <strong>{fact.name}</strong>;
  }
}
