// What the table shows.
import { useQuery } from "@tanstack/react-query";
import type { SubjectView } from "../../../app/views.ts";
import { RULE_TEXTS } from "../../../core/critique/note.ts";
import { api } from "../../client.ts";
import { KEYS, useDrawer } from "../../data/queries.ts";
import { count } from "../../words.ts";
import { ALL_SUBJECTS, type FactFilter } from "./use-filter.ts";

interface FilterBarProps {
  readonly subjects: readonly SubjectView[];
  readonly filter: FactFilter;
  readonly change: (part: Partial<FactFilter>) => void;
}

/** Subject, words, tag and part of the box. */
export function FilterBar({ subjects, filter, change }: FilterBarProps) {
  return (
    <search className="filter-bar" aria-label="Look for facts">
      <label className="field">
        <span>Subject</span>
        <select
          dir="auto"
          value={filter.subject}
          onChange={(event) => change({ subject: event.target.value, tag: "" })}
        >
          {subjects.length > 1 ? <option value={ALL_SUBJECTS}>All subjects</option> : null}
          {subjects.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span>Search</span>
        <input
          type="search"
          dir="auto"
          maxLength={200}
          value={filter.search}
          onChange={(event) => change({ search: event.target.value })}
        />
      </label>
      {filter.subject === ALL_SUBJECTS ? null : (
        <>
          <TagField subject={filter.subject} value={filter.tag} set={(tag) => change({ tag })} />
          <NoteField subject={filter.subject} value={filter.note} set={(note) => change({ note })} />
        </>
      )}
      <PlaceField value={filter.lies} set={(lies) => change({ lies })} />
    </search>
  );
}

interface ChoiceProps {
  readonly value: string;
  readonly set: (value: string) => void;
}

function TagField({ subject, value, set }: ChoiceProps & { readonly subject: string }) {
  const tags = useQuery({ queryKey: [...KEYS.tags, subject], queryFn: () => api.tags(subject) });
  const all = tags.data?.tags ?? [];
  const unknown = value !== "" && !all.some(({ tag }) => tag === value);
  return (
    <label className="field">
      <span>Tag</span>
      <select dir="auto" value={value} onChange={(event) => set(event.target.value)}>
        <option value="">Any or none</option>
        {unknown ? <option value={value}>{value}</option> : null}
        {all.map(({ tag, count: facts }) => (
          <option key={tag} value={tag}>
            {tag} ({count(facts)})
          </option>
        ))}
      </select>
    </label>
  );
}

function NoteField({ subject, value, set }: ChoiceProps & { readonly subject: string }) {
  const critique = useQuery({
    queryKey: [...KEYS.facts, "critique", subject],
    queryFn: () => api.critiqueCounts(subject),
  });
  const rules = critique.data?.rules ?? [];
  const title = (RULE_TEXTS as Readonly<Record<string, { readonly title: string }>>)[value]?.title ?? value;
  return (
    <label className="field">
      <span>What could be better</span>
      <select value={value} onChange={(event) => set(event.target.value)}>
        <option value="">Anything or nothing</option>
        {value !== "" && !rules.some(({ rule }) => rule === value) ? <option value={value}>{title} (0)</option> : null}
        {rules.map(({ rule, facts }) => (
          <option key={rule} value={rule}>
            {RULE_TEXTS[rule].title} ({count(facts)})
          </option>
        ))}
      </select>
    </label>
  );
}

function PlaceField({ value, set }: ChoiceProps) {
  const drawer = useDrawer();
  const compartments = drawer.data?.box.chart.compartments.length ?? 0;
  return (
    <label className="field">
      <span>Where its cards lie</span>
      <select value={value} onChange={(event) => set(event.target.value)}>
        <option value="">Anywhere</option>
        <option value="stock">In the stock</option>
        {Array.from({ length: compartments }, (_, i) => (
          <option key={`${i + 1}`} value={`compartment ${i + 1}`}>
            In compartment {i + 1}
          </option>
        ))}
        <option value="kept">Kept</option>
        <option value="withdrawn">Withdrawn</option>
      </select>
    </label>
  );
}
