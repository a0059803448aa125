// The facts of a subject in a list with search, a page at a time.
import { keepPreviousData, useInfiniteQuery } from "@tanstack/react-query";
import { useState } from "react";
import { Link } from "wouter";
import type { SubjectView } from "../../app/views.ts";
import type { Fact } from "../../core/facts/fact.ts";
import { factTitle } from "../../core/facts/fact-title.ts";
import { api, pictureUrl } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { useDebounced } from "../data/use-debounced.ts";
import { BusyButton } from "../shell/busy-button.tsx";
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
          <input dir="auto" value={tag} aria-describedby="tag-hint" onChange={(event) => setTag(event.target.value)} />
        </label>
      </div>
      <p id="tag-hint" className="hint">
        Search finds parts of words; a tag is written out whole.
      </p>
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
                <BusyButton busy={facts.isFetchingNextPage} onClick={() => void facts.fetchNextPage()}>
                  Load more
                </BusyButton>
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

function nothingWords(wanted: string): string {
  const [search = "", tag = ""] = wanted.split("\n").map((part) => part.trim());
  if (search + tag === "") return "No facts yet. Write the first one.";
  if (tag === "") return "No fact fits. Try fewer letters.";
  return search === "" ? "No fact has exactly this tag." : "No fact has exactly this tag and these words.";
}

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
    case "spelling":
      return (
        <>
          <strong>{fact.clue}</strong> <span className="fact-answer">{fact.word}</span>
        </>
      );
    default:
      return <strong>{factTitle(fact)}</strong>;
  }
}
