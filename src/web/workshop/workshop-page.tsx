// How do I turn this into good cards? The facts of a subject, and one of them open beside its cards.
import type { SubjectView } from "../../app/views.ts";
import { useSubjects } from "../data/queries.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { EditorPanel } from "./editor-panel.tsx";
import { FactList } from "./fact-list.tsx";
import { NoBoxYet } from "./no-box-yet.tsx";
import { SubjectBar } from "./subject-bar.tsx";
import { useWorkshopPlace } from "./use-place.ts";
import "../styles/workshop.css";

/** The workshop. */
export function WorkshopPage() {
  const subjects = useSubjects();
  return (
    <>
      <PageHeading title="Workshop">Workshop</PageHeading>
      <Loaded query={subjects} what="the subjects">
        {(all) => <Bench subjects={all} />}
      </Loaded>
    </>
  );
}

function Bench({ subjects }: { readonly subjects: readonly SubjectView[] }) {
  const place = useWorkshopPlace();
  const subject = subjects.find((one) => one.id === place.subject) ?? subjects[0] ?? null;
  const fact = place.fact ?? (subject ? null : "new");
  return (
    <>
      <SubjectBar subjects={subjects} subject={subject} />
      <NoBoxYet />
      <div className="bench" data-open={fact ? "" : undefined}>
        {subject ? <FactList key={subject.id} subject={subject} open={fact} /> : null}
        {fact ? (
          <EditorPanel key={fact === "new" ? `new ${subject?.id ?? ""}` : fact} id={fact} subject={subject} />
        ) : (
          <p className="bench-empty">Choose a fact to see its cards, or write a new one.</p>
        )}
      </div>
    </>
  );
}
