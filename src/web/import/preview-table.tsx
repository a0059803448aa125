// The first rows of a list, with what each column holds chosen above it.
import type { Column, ImportPreview } from "../../app/views.ts";
import { COLUMN_CHOICES } from "./column-names.ts";

interface PreviewTableProps {
  readonly preview: ImportPreview;
  readonly choose: (at: number, column: Column | null) => void;
}

/** The rows as they stand in the list. */
export function PreviewTable({ preview, choose }: PreviewTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
    <section className="table-scroll" tabIndex={0} aria-label="The first rows of the list">
      <table className="preview-table">
        <thead>
          <tr>
            {preview.columns.map((column, i) => (
              // Columns have no name but their place.
              <th key={`${i}`} scope="col">
                <ColumnChoice at={i} column={column} choose={choose} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {preview.sample.map((row, r) => (
            <tr key={`${r}`} data-heading={preview.header && r === 0 ? "" : undefined}>
              {preview.columns.map((column, c) => (
                <td key={`${c}`} dir="auto" data-unused={column === null ? "" : undefined}>
                  <span className="preview-cell">{row[c] ?? ""}</span>
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function ColumnChoice(
  props: { readonly at: number; readonly column: Column | null } & Pick<PreviewTableProps, "choose">,
) {
  const { at, column, choose } = props;
  return (
    <select
      aria-label={`Column ${at + 1} holds`}
      value={column ?? ""}
      onChange={(event) => choose(at, COLUMN_CHOICES.find(([value]) => value === event.target.value)?.[0] ?? null)}
    >
      <option value="">None</option>
      {COLUMN_CHOICES.map(([value, name]) => (
        <option key={value} value={value}>
          {name}
        </option>
      ))}
    </select>
  );
}
