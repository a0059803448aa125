// Facts before and after a change, with what is changed marked.
import type { BulkPreview } from "../../../app/views.ts";
import { TEXT_FIELDS, type TextField } from "../../../core/facts/text-fields.ts";
import { counted } from "../../words.ts";
import { FIELD_NAMES, fieldText } from "./cell-fields.ts";
import { type ChangedPart, changedParts } from "./changed-part.ts";

/** The facts that are shown of a preview, those parts of them that change. */
export function PreviewList({ preview: { shown, changed } }: { readonly preview: BulkPreview }) {
  const rows = shown.flatMap(({ before, after }) =>
    TEXT_FIELDS.map((field) => ({
      id: `${before.fact.id} ${field}`,
      field,
      from: fieldText(before.fact, field),
      to: fieldText(after.fact, field),
    })).filter(({ from, to }) => from !== to),
  );
  if (rows.length === 0) return null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled must be reached by keyboard
    <section className="preview-list" tabIndex={0} aria-label="Before and after">
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">Field</span>
            </th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, ...row }) => (
            <PreviewRow key={id} {...row} />
          ))}
        </tbody>
      </table>
      {changed > shown.length ? (
        <p className="hint">{counted(changed - shown.length, "more fact")} not shown.</p>
      ) : null}
    </section>
  );
}

function PreviewRow({ field, from, to }: { readonly field: TextField; readonly from: string; readonly to: string }) {
  const [before, after] = changedParts(from, to);
  return (
    <tr>
      <th scope="row">{FIELD_NAMES[field]}</th>
      <td dir="auto">
        <Marked part={before} as="del" />
      </td>
      <td dir="auto">
        <Marked part={after} as="ins" />
      </td>
    </tr>
  );
}

function Marked({ part, as: Mark }: { readonly part: ChangedPart; readonly as: "del" | "ins" }) {
  return (
    <>
      {part.before}
      {part.changed ? <Mark>{part.changed}</Mark> : null}
      {part.after}
    </>
  );
}
