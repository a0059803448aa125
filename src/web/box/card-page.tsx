// A card's own page: both sides, where it is, what happened to it, and moving it by hand.
import { useQuery } from "@tanstack/react-query";
import { Link } from "wouter";
import type { CardHistory } from "../../app/views.ts";
import { printedNumber } from "../../core/cards/card-number.ts";
import { sideText } from "../../core/cards/cards.ts";
import { CardPair } from "../cards/card-pair.tsx";
import { api } from "../client.ts";
import { KEYS, useDrawer } from "../data/queries.ts";
import { flush } from "../outbox/outbox.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { angleName, capital, longDate, placeName } from "../words.ts";
import { workshopAddress } from "../workshop/use-place.ts";
import { CardActions } from "./card-actions.tsx";
import { CardPaper } from "./card-paper.tsx";
import { HistoryTable } from "./history-table.tsx";
import { WithdrawnCard } from "./withdrawn-card.tsx";
import "../styles/box.css";

/** The page of one card. */
export function CardPage({ id }: { readonly id: string }) {
  const card = useQuery({
    queryKey: [...KEYS.card, id],
    queryFn: async () => {
      await flush();
      return api.card(id);
    },
  });
  return (
    <>
      <p className="back">
        <Link href="/box">Box</Link>
      </p>
      <Loaded query={card} what="the card" heading="Card" otherwise={<BackToBox />}>
        {(history) => <CardSheet history={history} />}
      </Loaded>
    </>
  );
}

const BackToBox = () => (
  <p>
    <Link href="/box">Look for the card in the box</Link>
  </p>
);

function CardSheet({ history }: { readonly history: CardHistory }) {
  const drawer = useDrawer(history.place !== null);
  const { card, number, place, dueDate, fact, subject } = history;
  const timeZone = drawer.data?.box.calendar.timeZone ?? "UTC";
  const bundles = drawer.data?.box.chart.compartments.map((compartment) => compartment.bundles) ?? [];
  return (
    <>
      <PageHeading title={`Card ${printedNumber(number)}`}>
        Card {printedNumber(number)} <span className="aside">— {angleName(card.angle).toLowerCase()}</span>
      </PageHeading>
      <p className="visually-hidden">{sideText(card.prompt)}</p>
      <CardPair card={card} caption={false} />
      <p className="lead">
        {capital(placeName(place, bundles))}
        {dueDate ? `, asked next on ${longDate(dueDate)}` : ""}. From <span dir="auto">{subject}</span>:{" "}
        <Link href={workshopAddress({ subject: fact.subject, fact: fact.id })}>open its fact</Link>.
      </p>
      {place && drawer.data ? (
        place.kind === "withdrawn" ? (
          <WithdrawnCard history={history} box={drawer.data.box} day={drawer.data.day} />
        ) : (
          <CardActions history={history} box={drawer.data.box} day={drawer.data.day} compartments={bundles.length} />
        )
      ) : null}
      <CardPaper card={card.id} number={number} timeZone={timeZone} />
      <HistoryTable entries={history.entries} timeZone={timeZone} />
    </>
  );
}
