// The proposals for a text: its sentences with what could be blanked out, or its list.
import type { Dispatch, SetStateAction } from "react";
import type { BlankReason } from "../../../core/splitting/blanks.ts";
import type { ListProposal, Proposal, SentenceProposal } from "../../../core/splitting/split-text.ts";
import { counted } from "../../words.ts";
import { stretchKey, type Ticked, titleOf, toggled } from "./ticked.ts";

interface ProposalProps<P> {
  readonly proposal: P;
  readonly text: string;
  readonly ticked: Ticked;
  readonly change: Dispatch<SetStateAction<Ticked>>;
}

const REASONS: Readonly<Record<BlankReason, string>> = {
  number: "number",
  date: "date",
  name: "name",
  term: "key word",
};

/** Every proposal, in the order of the text. */
export function ProposalList({
  proposals,
  ...rest
}: Omit<ProposalProps<never>, "proposal"> & { readonly proposals: readonly Proposal[] }) {
  return (
    <ol className="proposals" aria-label="What could be asked">
      {proposals.map((one) => (
        <li key={stretchKey(one.source)} className="sheet">
          {one.kind === "list" ? <ListOffer proposal={one} {...rest} /> : <SentenceOffer proposal={one} {...rest} />}
        </li>
      ))}
    </ol>
  );
}

/** The sentence itself, its possible blanks as switches in their places. */
function SentenceOffer({ proposal, text, ticked, change }: ProposalProps<SentenceProposal>) {
  const { source, blanks } = proposal;
  const parts: { readonly text: string; readonly blank: (typeof blanks)[number] | null }[] = [];
  let at = source.from;
  for (const blank of blanks) {
    parts.push({ text: text.slice(at, blank.from), blank: null });
    parts.push({ text: text.slice(blank.from, blank.to), blank });
    at = blank.to;
  }
  parts.push({ text: text.slice(at, source.to), blank: null });
  return (
    <p dir="auto" className="offer">
      {parts.map(({ text: words, blank }, i) =>
        blank ? (
          <button
            key={stretchKey(blank)}
            type="button"
            className="blank-switch"
            data-why={blank.why}
            aria-pressed={ticked.blanks.has(stretchKey(blank))}
            aria-label={`${words}: ask for this ${REASONS[blank.why]}`}
            title={`Ask for this ${REASONS[blank.why]}`}
            onClick={() => change((all) => toggled(all, "blanks", stretchKey(blank)))}
          >
            {words}
          </button>
        ) : (
          <span key={i}>{words}</span>
        ),
      )}
      {blanks.length === 0 ? <span className="hint"> Nothing in it is proposed.</span> : null}
    </p>
  );
}

function ListOffer({ proposal, ticked, change }: ProposalProps<ListProposal>) {
  const key = stretchKey(proposal.source);
  const on = ticked.lists.has(key);
  const title = titleOf(proposal, ticked);
  return (
    <div className="list-offer">
      <label className="tick">
        <input type="checkbox" checked={on} onChange={() => change((all) => toggled(all, "lists", key))} />
        Ask this list from each item to the next: {counted(proposal.items.length, "card")}
      </label>
      <label className="field">
        <span>What the list is called</span>
        <input
          dir="auto"
          value={title}
          maxLength={500}
          onChange={(event) =>
            change((all) => ({ ...all, titles: new Map([...all.titles, [key, event.target.value]]) }))
          }
        />
        {on && title.trim() === "" ? <span className="hint">It needs a title before it can be asked.</span> : null}
      </label>
      <ol>
        {proposal.items.map((item, i) => (
          <li key={i} dir="auto">
            {item}
          </li>
        ))}
      </ol>
    </div>
  );
}
