// How do I get it on paper? Choose, see every sheet as it will be printed, make the PDF, and keep the paper up to date.
import { useQuery } from "@tanstack/react-query";
import { useMemo } from "react";
import { Link } from "wouter";
import type { PaperCardsView } from "../../app/print-versions.ts";
import type { SubjectView } from "../../app/views.ts";
import { api } from "../client.ts";
import { KEYS, useSubjects } from "../data/queries.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { Calibration } from "./calibration.tsx";
import { CardChoice } from "./card-choice.tsx";
import { ClassPack } from "./class-pack.tsx";
import { draftProblems, orderOf, settleDraft } from "./kit-draft.ts";
import { isPrinted, outdatedCount, outdatedWords } from "./kit-words.ts";
import { PaperChoice } from "./paper-choice.tsx";
import { PartChoice } from "./part-choice.tsx";
import { KitPreviewPanel } from "./preview/kit-preview.tsx";
import { usePreview } from "./preview/use-preview.ts";
import { PrintPanel } from "./print/print-panel.tsx";
import { useKitJob } from "./print/use-kit-job.ts";
import { TurnChoice } from "./turn-choice.tsx";
import { useKitDraft } from "./use-kit-draft.ts";
import { YourPaper } from "./your-paper/your-paper.tsx";
import "../styles/kit.css";

/** The Kit page. */
export function KitPage() {
  const subjects = useSubjects();
  return (
    <>
      <PageHeading title="Kit">Kit</PageHeading>
      <Loaded query={subjects} what="the subjects">
        {(all) => (all.some(({ cards }) => cards > 0) ? <Paper subjects={all} /> : <NoCards />)}
      </Loaded>
    </>
  );
}

const NoCards = () => (
  <div className="sheet">
    <p className="lead">A kit is your box on paper: cards, dividers, chart and calendar. There are no cards yet.</p>
    <p className="row">
      <Link href="/workshop" className="button primary">
        Write a first fact
      </Link>
      <Link href="/workshop/import" className="button">
        Bring a list
      </Link>
    </p>
  </div>
);

/** What is known of the paper comes first: it decides what is usually printed. */
function Paper({ subjects }: { readonly subjects: readonly SubjectView[] }) {
  const all = useMemo(() => subjects.map(({ id }) => id), [subjects]);
  const paper = useQuery({ queryKey: [...KEYS.kit, "paper", all], queryFn: () => api.paperCards(all) });
  return (
    <Loaded query={paper} what="what is on paper">
      {(view) => <Kit subjects={subjects} paper={view} />}
    </Loaded>
  );
}

function Kit({ subjects, paper }: { readonly subjects: readonly SubjectView[]; readonly paper: PaperCardsView }) {
  const { draft, names, change, setNames } = useKitDraft();
  const job = useKitJob();
  const printed = isPrinted(paper.counts);
  const settled = settleDraft(draft, { subjects: subjects.map(({ id }) => id), printed, names });
  const problems = draftProblems(draft, names);
  const fit = Object.keys(problems).length === 0;
  const whole = orderOf(settled, fit ? names : "");
  const order = fit ? whole : null;
  const asked = usePreview(order);
  const wrong = outdatedCount(paper.counts);
  const form = { draft: settled, change };
  return (
    <>
      <p className="lead">
        Your box on paper. Choose what you want, look at every sheet, then make one PDF and print it.{" "}
        {wrong > 0 ? <a href="#your-paper">{outdatedWords(wrong)}</a> : null}
      </p>
      <div className="kit">
        <div className="kit-choices">
          <CardChoice {...form} subjects={subjects} counts={paper.counts} pack={names.trim() !== ""} />
          <PartChoice {...form} />
          <PaperChoice {...form} problems={problems} />
          <TurnChoice {...form} />
          <Calibration {...form} print={() => job.open({ ...whole, parts: ["calibration"] }, false)} />
          <ClassPack {...form} names={names} setNames={setNames} problem={problems.names} />
        </div>
        <div className="kit-result">
          <PrintPanel
            {...{ job, asked, order }}
            draft={settled}
            zip={draft.zip && names.trim() !== ""}
            printed={() => change({ only: null, parts: null })}
          />
          <KitPreviewPanel {...{ asked, order }} draft={settled} />
        </div>
      </div>
      <YourPaper paper={paper} printed={printed} />
    </>
  );
}
