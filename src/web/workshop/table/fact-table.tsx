// The facts in a table, each cell changed where it stands.
import { Link } from "wouter";
import type { Fact } from "../../../core/facts/fact.ts";
import { factTitle } from "../../../core/facts/fact-title.ts";
import { pictureUrl } from "../../client.ts";
import { workshopAddress } from "../use-place.ts";
import { COLUMN_NAMES, cellField, fieldText, TEXT_COLUMNS, tagsIn, withField } from "./cell-fields.ts";
import { TextCell } from "./text-cell.tsx";
import type { Chosen } from "./use-chosen.ts";

/** The table; a tick chooses a fact for a change to many. */
export function FactTable({ facts, chosen }: { readonly facts: readonly Fact[]; readonly chosen: Chosen }) {
  const every = chosen.all || facts.every((fact) => chosen.facts.has(fact.id));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled sideways must be reached by keyboard
    <section className="table-scroll" tabIndex={0} aria-label="Table of facts">
      <table className="fact-table">
        <thead>
          <tr>
            <th scope="col">
              <label className="tick">
                <input type="checkbox" checked={every} onChange={() => chosen.set(facts, !every)} />
                <span className="visually-hidden">Choose every fact shown</span>
              </label>
            </th>
            {TEXT_COLUMNS.map((column) => (
              <th key={column} scope="col">
                {COLUMN_NAMES[column]}
              </th>
            ))}
            <th scope="col">{COLUMN_NAMES.tags}</th>
            <th scope="col">
              <span className="visually-hidden">Open</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {facts.map((fact) => (
            <FactRow key={fact.id} fact={fact} on={chosen.all || chosen.facts.has(fact.id)} toggle={chosen.toggle} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface RowProps {
  readonly fact: Fact;
  readonly on: boolean;
  readonly toggle: (fact: string) => void;
}

function FactRow({ fact, on, toggle }: RowProps) {
  const title = factTitle(fact);
  return (
    <tr data-chosen={on ? "" : undefined}>
      <td>
        <label className="tick">
          <input type="checkbox" checked={on} onChange={() => toggle(fact.id)} />
          <span className="visually-hidden">Choose {title}</span>
        </label>
      </td>
      {TEXT_COLUMNS.map((column) => {
        const field = cellField(fact, column);
        return (
          <td key={column} data-label={field || fact.picture ? COLUMN_NAMES[column] : undefined}>
            {field ? (
              <TextCell
                fact={fact}
                label={`${COLUMN_NAMES[column]} of ${title}`}
                saved={fieldText(fact, field)}
                change={(text) => withField(fact, field, text)}
              />
            ) : null}
            {!field && column === "asks" && fact.picture ? (
              <img src={pictureUrl(fact.picture)} alt="" loading="lazy" />
            ) : null}
          </td>
        );
      })}
      <td data-label={COLUMN_NAMES.tags}>
        <TextCell
          fact={fact}
          label={`Tags of ${title}`}
          saved={fact.tags.join(", ")}
          change={(text) => ({ ...fact, tags: tagsIn(text) })}
        />
      </td>
      <td>
        <Link href={workshopAddress({ subject: fact.subject, fact: fact.id })} aria-label={`Open ${title}`}>
          Open
        </Link>
      </td>
    </tr>
  );
}
