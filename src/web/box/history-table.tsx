// What happened to a card, newest first; what was taken back is struck through.
import type { CardHistory } from "../../app/views.ts";
import type { LogEntry, OutcomeEntry } from "../../core/log/entry.ts";
import { capital, instantIn } from "../words.ts";

interface HistoryProps {
  readonly entries: CardHistory["entries"];
  readonly timeZone: string;
}

/** The card's part of the log. */
export function HistoryTable({ entries, timeZone }: HistoryProps) {
  if (entries.length === 0) return <p className="hint">Nothing has happened to this card yet.</p>;
  return (
    <section aria-labelledby="history">
      <h2 id="history">What happened</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label="History">
        <table className="history">
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">Box day</th>
              <th scope="col">What happened</th>
              <th scope="col">Seconds</th>
            </tr>
          </thead>
          <tbody>
            {entries.toReversed().map((entry) => (
              <tr key={entry.id} data-taken-back={entry.takenBack ? "" : undefined}>
                <td>{instantIn(entry.at, timeZone)}</td>
                <td>{"day" in entry ? entry.day : ""}</td>
                <td>
                  {entry.takenBack ? <s>{entryWords(entry)}</s> : entryWords(entry)}
                  {entry.takenBack ? " (taken back)" : ""}
                </td>
                <td>{entry.kind === "outcome" && entry.seconds !== null ? Math.round(entry.seconds) : ""}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

function entryWords(entry: LogEntry): string {
  switch (entry.kind) {
    case "look":
      return "First look";
    case "outcome":
      return outcomeWords(entry);
    case "move":
      return `Moved by hand to ${typeof entry.to === "number" ? `compartment ${entry.to}` : entry.to === "kept" ? "the kept shelf" : "the stock"}`;
    case "withdraw":
      return WITHDRAWN[entry.reason];
    case "bring-back":
      return "Brought back";
    case "chart":
      return "The chart was changed";
    case "take-back":
      return "Taken back";
    default:
      return capital(entry.kind);
  }
}

const WITHDRAWN = {
  hand: "Withdrawn by hand",
  angle: "Withdrawn: its angle was switched off",
  fact: "Withdrawn: its fact was deleted",
} as const;

function outcomeWords({ pass, answer, compartment }: OutcomeEntry): string {
  if (pass === "second") return `Second pass: ${answer}`;
  if (pass === "introduction")
    return answer === "recalled" ? "Introduced into compartment 1" : "Missed while introduced";
  return `${capital(answer)} in compartment ${compartment}`;
}
