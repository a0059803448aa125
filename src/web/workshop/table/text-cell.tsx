// A cell whose text is changed where it stands: saved on leaving it or by Enter, given up by Escape.
import { useMutation } from "@tanstack/react-query";
import { type KeyboardEvent, useEffect, useState } from "react";
import type { Fact } from "../../../core/facts/fact.ts";
import { api, type EditFact } from "../../client.ts";
import { errorWords, useRefresh } from "../../data/queries.ts";
import { useUndo } from "../history/use-undo.ts";

interface TextCellProps {
  readonly fact: Fact;
  readonly label: string;
  readonly saved: string;
  /** The fact with this text. */
  readonly change: (text: string) => Fact;
}

/** One cell. */
export function TextCell({ fact, label, saved, change }: TextCellProps) {
  const [text, setText] = useState(saved);
  useEffect(() => setText(saved), [saved]);
  const save = useCellSave();
  const commit = (): void => {
    if (text === saved || save.isPending) return;
    save.mutate(change(text));
  };
  const onKey = (event: KeyboardEvent<HTMLTextAreaElement>): void => {
    if (event.key === "Enter" && !event.shiftKey) {
      event.preventDefault();
      commit();
    }
    if (event.key === "Escape") {
      setText(saved);
      save.reset();
    }
  };
  const trouble = save.error ? errorWords(save.error) : null;
  return (
    <>
      <textarea
        dir="auto"
        rows={1}
        aria-label={label}
        aria-invalid={trouble ? true : undefined}
        data-unsaved={text === saved ? undefined : ""}
        value={text}
        maxLength={5_000}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={onKey}
      />
      {trouble ? (
        <p role="alert" className="cell-trouble">
          {trouble} Escape brings back what was saved.
        </p>
      ) : null}
    </>
  );

  function useCellSave() {
    const refresh = useRefresh();
    const { offer } = useUndo();
    return useMutation({
      mutationFn: (next: Fact) => {
        const { id, subject: _subject, angles, ...content } = next;
        const kept = fact.kind === "statement" ? {} : { angles: [...angles] };
        return api.editFact(id, { content: content as EditFact["content"], ...kept });
      },
      onSuccess: async ({ id }) => {
        await offer("Saved.", id);
        await refresh();
      },
    });
  }
}
