// Paper cards that are not as they should be, and why.
import { Link } from "wouter";
import type { OutdatedCard, PaperCardsView } from "../../../app/print-versions.ts";
import { printedNumber } from "../../../core/cards/card-number.ts";
import type { FaceChange } from "../../../core/kit/printed-face.ts";
import { capital, counted } from "../../words.ts";
import { outdatedCount, STATE_WORDS } from "../kit-words.ts";

const PARTS: Readonly<Record<FaceChange["part"], string>> = { prompt: "Front", answer: "Back", notes: "Small print" };

interface OutdatedTableProps {
  readonly cards: readonly OutdatedCard[];
  readonly counts: PaperCardsView["counts"];
}

/** A row for each card; nothing where all paper is in order. */
export function OutdatedTable({ cards, counts }: OutdatedTableProps) {
  if (cards.length === 0) return null;
  const more = outdatedCount(counts) - cards.length;
  return (
    <details className="opened">
      <summary>Which paper cards, and why</summary>
      <div className="table-scroll">
        <table className="outdated">
          <thead>
            <tr>
              <th scope="col">Card</th>
              <th scope="col">What is wrong</th>
            </tr>
          </thead>
          <tbody>
            {cards.map((one) => (
              <tr key={one.card}>
                <th scope="row">
                  <Link href={`/box/card/${encodeURIComponent(one.card)}`}>{printedNumber(one.number)}</Link>
                </th>
                <td>
                  {capital(STATE_WORDS[one.state])}
                  {one.state === "changed" ? <FaceChanges changes={one.changes} /> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {more > 0 ? <p className="hint">And {counted(more, "more card", "more cards")}.</p> : null}
    </details>
  );
}

/** What the paper says, and what the fact says now. */
export const FaceChanges = ({ changes }: { readonly changes: readonly FaceChange[] }) => (
  <ul className="face-changes">
    {changes.map(({ part, before, after, picture }) => (
      <li key={part}>
        {PARTS[part]}:{" "}
        {before === after ? null : (
          <>
            <del dir="auto">{before || "nothing"}</del> <span className="visually-hidden">is now</span>{" "}
            <ins dir="auto">{after || "nothing"}</ins>
          </>
        )}
        {picture ? " another picture" : ""}
      </li>
    ))}
  </ul>
);
