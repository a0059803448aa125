// Which subjects, and whether all their cards or only those whose paper is missing or out of date.
import type { PaperCardsView } from "../../app/print-versions.ts";
import type { SubjectView } from "../../app/views.ts";
import { counted } from "../words.ts";
import type { KitDraft, SettledDraft } from "./kit-draft.ts";
import { isPrinted, toPrint } from "./kit-words.ts";

/** A draft and how it is changed. */
export interface ChoiceProps {
  readonly draft: SettledDraft;
  readonly change: (part: Partial<KitDraft>) => void;
}

interface CardChoiceProps extends ChoiceProps {
  readonly subjects: readonly SubjectView[];
  readonly counts: PaperCardsView["counts"];
  /** Whether boxes for a class are made, which hold all cards. */
  readonly pack: boolean;
}

/** Whose cards, and which of them. */
export function CardChoice({ draft, change, subjects, counts, pack }: CardChoiceProps) {
  const { subjects: chosen, only } = draft;
  const flip = (id: string, on: boolean): void =>
    change({ subjects: subjects.map((one) => one.id).filter((one) => (one === id ? on : chosen.includes(one))) });
  return (
    <>
      {subjects.length > 1 ? (
        <fieldset>
          <legend>Subjects</legend>
          <div className="chips">
            {subjects.map(({ id, name, cards }) => (
              <label key={id} className="chip">
                <input
                  type="checkbox"
                  checked={chosen.includes(id)}
                  onChange={(event) => flip(id, event.target.checked)}
                />
                <span>
                  <span dir="auto">{name}</span>, {counted(cards, "card")}
                </span>
              </label>
            ))}
          </div>
        </fieldset>
      ) : null}
      {isPrinted(counts) && !pack ? (
        <fieldset>
          <legend>Which cards</legend>
          <Only value="changed" now={only} change={change}>
            Only what is new, changed, lost or damaged
            <span className="hint">{` ${toPrint(counts) === 0 ? "none now" : counted(toPrint(counts), "card")}`}</span>
          </Only>
          <Only value="all" now={only} change={change}>
            All cards
          </Only>
        </fieldset>
      ) : null}
    </>
  );
}

function Only(props: {
  readonly value: "all" | "changed";
  readonly now: "all" | "changed";
  readonly change: ChoiceProps["change"];
  readonly children: React.ReactNode;
}) {
  const { value, now, change, children } = props;
  return (
    <label className="choice">
      <input type="radio" name="only" checked={now === value} onChange={() => change({ only: value })} />
      <span>{children}</span>
    </label>
  );
}
