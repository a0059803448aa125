// The paper that is out there: what is out of date and why, what is lost, and what was said of it last.
import type { PaperCardsView } from "../../../app/print-versions.ts";
import { paperWords } from "../kit-words.ts";
import { MissingForm } from "./missing-form.tsx";
import { OutdatedTable } from "./outdated-table.tsx";
import { PaperSteps } from "./paper-steps.tsx";

interface YourPaperProps {
  readonly paper: PaperCardsView;
  /** Whether anything was ever recorded as printed. */
  readonly printed: boolean;
}

/** How paper and box stand to each other. */
export function YourPaper({ paper, printed }: YourPaperProps) {
  return (
    <section className="sheet your-paper" aria-labelledby="your-paper">
      <h2 id="your-paper">Your paper</h2>
      {printed ? (
        <>
          <p role="status">{paperWords(paper.counts)}</p>
          <OutdatedTable cards={paper.outdated} counts={paper.counts} />
          <MissingForm />
        </>
      ) : (
        <p>
          Nothing is recorded as printed. Once you have printed cards, press “These are printed” below the PDF: then
          this place says which paper cards are out of date, and only those need printing again.
        </p>
      )}
      <PaperSteps steps={paper.steps} />
    </section>
  );
}
