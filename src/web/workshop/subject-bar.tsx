// Which subject lies on the bench, and what can be done with it as a whole.
import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { Link } from "wouter";
import type { SubjectView } from "../../app/views.ts";
import { api, exportUrl } from "../client.ts";
import { errorWords, useRefresh } from "../data/queries.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { NameDialog } from "../shell/name-dialog.tsx";
import { useNotify } from "../shell/notices.tsx";
import { counted } from "../words.ts";
import { useWorkshopPlace } from "./use-place.ts";

interface BarProps {
  readonly subjects: readonly SubjectView[];
  readonly subject: SubjectView | null;
}

/** Switches, names, brings and takes away subjects. */
export function SubjectBar({ subjects, subject }: BarProps) {
  const { open } = useWorkshopPlace();
  const [naming, setNaming] = useState<"new" | "rename" | null>(null);
  const remove = useRemoveSubject();
  return (
    <div className="subject-bar">
      {subject ? (
        <>
          <label className="field inline">
            <span>Subject</span>
            <select
              dir="auto"
              value={subject.id}
              onChange={(event) => open({ subject: event.target.value, fact: null })}
            >
              {subjects.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.name}
                </option>
              ))}
            </select>
          </label>
          <span className="subject-size">
            {counted(subject.facts, "fact")}, {counted(subject.cards, "card")}
          </span>
        </>
      ) : null}
      <span className="row">
        {subject ? (
          <>
            <button type="button" className="quiet" onClick={() => setNaming("rename")}>
              Rename
            </button>
            {subject.facts === 0 ? (
              <BusyButton className="quiet" busy={remove.isPending} onClick={() => remove.mutate(subject.id)}>
                Remove
              </BusyButton>
            ) : (
              <a className="button quiet" href={exportUrl(subject.id)} download>
                Export
              </a>
            )}
          </>
        ) : null}
        <button type="button" className="quiet" onClick={() => setNaming("new")}>
          New subject
        </button>
      </span>
      <span className="row grow end">
        {subject ? (
          <>
            <Link className="button" href={`/workshop/table?subject=${encodeURIComponent(subject.id)}`}>
              Many at once
            </Link>
            <Link className="button" href={`/workshop/split?subject=${encodeURIComponent(subject.id)}`}>
              Split a text
            </Link>
          </>
        ) : null}
        <Link className="button" href="/workshop/import">
          Bring a list
        </Link>
        {subject ? (
          <button type="button" className="primary" onClick={() => open({ subject: subject.id, fact: "new" })}>
            New fact
          </button>
        ) : null}
      </span>
      {naming ? <SubjectNaming subject={naming === "rename" ? subject : null} close={() => setNaming(null)} /> : null}
    </div>
  );
}

/** Takes away an empty subject, and leads to another one. */
function useRemoveSubject() {
  const { open } = useWorkshopPlace();
  const refresh = useRefresh();
  const notify = useNotify();
  return useMutation({
    mutationFn: api.removeSubject,
    onSuccess: async () => {
      open({ subject: null, fact: null });
      await refresh();
      notify("The empty subject is removed.");
    },
    onError: (error) => notify(errorWords(error)),
  });
}

function SubjectNaming({ subject, close }: { readonly subject: SubjectView | null; readonly close: () => void }) {
  const { open } = useWorkshopPlace();
  const refresh = useRefresh();
  const notify = useNotify();
  const remove = useRemoveSubject();
  const back = useMutation({
    mutationFn: ({ id, name }: SubjectView) => api.renameSubject(id, name),
    onSuccess: refresh,
  });
  const save = useMutation({
    mutationFn: (name: string) => (subject ? api.renameSubject(subject.id, name) : api.createSubject(name)),
    onSuccess: async (saved) => {
      await refresh();
      close();
      if (subject) notify("The subject is renamed.", () => back.mutate(subject));
      if (subject) return;
      open({ subject: saved.id, fact: "new" });
      notify("The subject is made.", () => remove.mutate(saved.id));
    },
  });
  return (
    <NameDialog
      title={subject ? "Rename the subject" : "A new subject"}
      label="Name"
      initial={subject?.name ?? ""}
      yes={subject ? "Rename" : "Make the subject"}
      busy={save.isPending}
      error={save.error}
      save={save.mutate}
      close={close}
    />
  );
}
