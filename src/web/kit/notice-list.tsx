// What does not come out as it should, each with the way to the fact behind it.
import { Link } from "wouter";
import type { KitNotice } from "../../app/print-views.ts";
import { counted } from "../words.ts";
import { workshopAddress } from "../workshop/use-place.ts";

interface NoticeListProps {
  readonly title: string;
  readonly notices: readonly KitNotice[];
  /** Subjects that are printed. */
  readonly subjects: readonly string[];
}

const MOST_SHOWN = 20;

/** Nothing where there is nothing to say. */
export function NoticeList({ title, notices, subjects }: NoticeListProps) {
  if (notices.length === 0) return null;
  // The editor finds a fact by itself; the subject only chooses the list beside it.
  const subject = subjects.length === 1 ? (subjects[0] ?? null) : null;
  const told = [...new Map(notices.map((notice) => [notice.text, notice])).values()];
  const more = told.length - MOST_SHOWN;
  return (
    <div className="trouble kit-notices">
      <strong>{title}</strong>
      <ul>
        {told.slice(0, MOST_SHOWN).map(({ text, card }) => (
          <li key={text}>
            <span dir="auto">{text}</span>{" "}
            {card ? <Link href={workshopAddress({ subject, fact: card.fact })}>Mend it</Link> : null}
          </li>
        ))}
      </ul>
      {more > 0 ? <p>And {counted(more, "more notice", "more notices")}.</p> : null}
    </div>
  );
}
