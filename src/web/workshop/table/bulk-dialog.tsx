// A change to many facts is looked at before it is made.
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { type FormEvent, type ReactNode, useId } from "react";
import type { BulkPreview } from "../../../app/views.ts";
import { api, type BulkOrder } from "../../client.ts";
import { KEYS } from "../../data/queries.ts";
import { useDebounced } from "../../data/use-debounced.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Trouble } from "../../shell/states.tsx";
import { useModal } from "../../shell/use-modal.ts";
import { counted } from "../../words.ts";
import { PreviewList } from "./preview-list.tsx";
import { useBulk } from "./use-bulk.ts";

/** What every dialog for many facts is given. */
export interface BulkDialogProps {
  readonly chosen: BulkOrder["chosen"];
  readonly many: number;
  readonly close: () => void;
  /** Told when the change was made. */
  readonly done: () => void;
}

interface FrameProps extends BulkDialogProps {
  readonly title: string;
  readonly yes: string;
  /** What is to be done; null while the form is not filled in. */
  readonly change: BulkOrder["change"] | null;
  readonly children: ReactNode;
}

const TYPING_MS = 300;

/** The dialog around a form: what it would do below, and the button that does it. */
export function BulkDialog({ title, yes, change, children, chosen, close, done }: FrameProps) {
  const dialog = useModal();
  const id = useId();
  const { run, busy } = useBulk(() => {
    close();
    done();
  });
  const wanted = JSON.stringify(change && { chosen, change });
  const order = JSON.parse(useDebounced(wanted, TYPING_MS)) as BulkOrder | null;
  const preview = useQuery({
    queryKey: [...KEYS.facts, "bulk", order],
    queryFn: () => (order ? api.previewBulk(order) : null),
    enabled: order !== null,
    placeholderData: keepPreviousData,
  });
  const ready = change !== null && !busy && (preview.data?.changed ?? 0) > 0 && wanted === JSON.stringify(order);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (ready) run({ chosen, change });
  };
  return (
    <dialog ref={dialog} className="dialog bulk-dialog" aria-labelledby={id} onCancel={close}>
      <form onSubmit={submit}>
        <h2 id={id}>{title}</h2>
        {children}
        {order && preview.error ? <Trouble error={preview.error} /> : null}
        {order && preview.data ? <Outcome preview={preview.data} /> : null}
        <div className="row end">
          <button type="button" onClick={close}>
            Cancel
          </button>
          <BusyButton type="submit" className="primary" busy={!ready}>
            {yes}
          </BusyButton>
        </div>
      </form>
    </dialog>
  );
}

function Outcome({ preview }: { readonly preview: BulkPreview }) {
  const { changed, refused } = preview;
  return (
    <>
      <p role="status">
        {changed === 0 ? "This changes nothing." : `This changes ${counted(changed, "fact")}.`}
        {refused.length > 0 ? ` ${counted(refused.length, "fact")} cannot be changed so:` : ""}
      </p>
      {refused.length > 0 ? (
        <ul className="refused">
          {refused.slice(0, 20).map(({ fact, title, reason }) => (
            <li key={fact}>
              <strong dir="auto">{title}</strong> {reason}
            </li>
          ))}
        </ul>
      ) : null}
      <PreviewList preview={preview} />
    </>
  );
}
