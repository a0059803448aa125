// The cards of an opened part of the drawer, a page at a time.
import { useInfiniteQuery } from "@tanstack/react-query";
import { useEffect, useRef } from "react";
import { Link } from "wouter";
import type { DrawerView, PlacedCard } from "../../app/views.ts";
import { type CardSide, sideText } from "../../core/cards/cards.ts";
import { api, pictureUrl } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Loaded } from "../shell/states.tsx";
import { counted, longDate } from "../words.ts";
import { type Part, partKey, partTitle } from "./drawer-part.ts";

const PAGE = 60;

/** A list of cards that lead to their own pages. */
export function PartCards({ part, view }: { readonly part: Part; readonly view: DrawerView }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const cards = usePartCards(part);
  const bundle =
    part.kind === "compartment"
      ? view.compartments[part.compartment - 1]?.bundles.find((one) => one.bundle === part.bundle)
      : undefined;
  useEffect(() => {
    heading.current?.scrollIntoView({ block: "nearest" });
  }, []);
  return (
    <section className="part-list" aria-labelledby="part-title">
      <h2 id="part-title" ref={heading}>
        {partTitle(part, view)}
      </h2>
      <Loaded query={cards} what="the cards">
        {({ pages }) => {
          const items = pages.flatMap((page) => page.items);
          const total = pages.at(-1)?.total ?? 0;
          return (
            <>
              <p className="hint">
                {total === 0
                  ? "No cards here."
                  : `${counted(total, "card")}${items.length < total ? `, ${items.length} shown` : ""}.`}
                {bundle ? ` Visited next on ${longDate(bundle.nextVisit)}.` : ""}
              </p>
              <ul className="card-rows">
                {items.map((placed) => (
                  <CardRow key={placed.card.id} placed={placed} />
                ))}
              </ul>
              {cards.hasNextPage ? (
                <BusyButton busy={cards.isFetchingNextPage} onClick={() => void cards.fetchNextPage()}>
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

function usePartCards(part: Part) {
  const where =
    part.kind === "compartment"
      ? { place: part.kind, compartment: part.compartment, bundle: part.bundle }
      : { place: part.kind };
  return useInfiniteQuery({
    queryKey: [...KEYS.boxCards, partKey(part)],
    queryFn: ({ pageParam }) => api.boxCards({ ...where, after: pageParam ?? undefined, limit: PAGE }),
    initialPageParam: null as string | null,
    getNextPageParam: (last) => last.next,
  });
}

function CardRow({ placed }: { readonly placed: PlacedCard }) {
  const { card, number, subject } = placed;
  return (
    <li>
      <Link href={`/box/card/${encodeURIComponent(card.id)}`} className="card-row">
        <span className="card-number">{number}</span>
        <span className="card-row-prompt" dir="auto">
          <RowSide side={card.prompt} />
        </span>
        <span className="card-row-answer" dir="auto">
          <RowSide side={card.answer} />
        </span>
        <span className="card-row-subject" dir="auto">
          {subject}
        </span>
      </Link>
    </li>
  );
}

function RowSide({ side }: { readonly side: CardSide }) {
  if (side.text.length > 0) {
    const asked = side.text.filter((part) => part.role === "answer");
    return asked.length > 0 ? asked.map((part) => part.text).join(", ") : sideText(side);
  }
  if (side.picture) return <img src={pictureUrl(side.picture)} alt="Shown on the card" loading="lazy" />;
  return side.sound ? <span className="hint">a sound</span> : null;
}
