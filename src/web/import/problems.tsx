// Rows that cannot be taken as they are, each with its place and its reason.
import type { ImportPreview } from "../../app/views.ts";
import { counted } from "../words.ts";
import { COLUMN_NAMES } from "./column-names.ts";

/** The list of problems; nothing if there are none. */
export function Problems({ preview }: { readonly preview: ImportPreview }) {
  if (preview.problemCount === 0) return null;
  const more = preview.problemCount - preview.problems.length;
  return (
    <details className="problems" open>
      <summary>{counted(preview.problemCount, "problem")}: these rows are left out unless you mend the list</summary>
      <ul>
        {preview.problems.map(({ line, column, field, reason }) => (
          <li key={`${line}:${column}:${reason}`}>
            <strong>
              Line {line}, character {column}
              {field ? ` (${COLUMN_NAMES[field]})` : ""}:
            </strong>{" "}
            <span dir="auto">{reason}</span>
          </li>
        ))}
      </ul>
      {more > 0 ? <p className="hint">And {counted(more, "more", "more")}.</p> : null}
    </details>
  );
}
