// Asks for a name in a dialog.
import { type FormEvent, useId, useState } from "react";
import { BusyButton } from "./busy-button.tsx";
import { Trouble } from "./states.tsx";
import { useModal } from "./use-modal.ts";

interface NameDialogProps {
  readonly title: string;
  readonly label: string;
  readonly initial?: string;
  readonly yes: string;
  readonly busy: boolean;
  readonly error: unknown;
  readonly save: (name: string) => void;
  readonly close: () => void;
}

/** A dialog with one text field. */
export function NameDialog({ title, label, initial = "", yes, busy, error, save, close }: NameDialogProps) {
  const dialog = useModal();
  const id = useId();
  const [name, setName] = useState(initial);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    save(name.trim());
  };
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby={id} onCancel={close}>
      <form onSubmit={submit}>
        <h2 id={id}>{title}</h2>
        <label className="field">
          <span>{label}</span>
          <input dir="auto" value={name} maxLength={120} onChange={(event) => setName(event.target.value)} />
        </label>
        {error ? <Trouble error={error} /> : null}
        <div className="row end">
          <button type="button" onClick={close}>
            Cancel
          </button>
          <BusyButton type="submit" className="primary" busy={busy || name.trim() === ""}>
            {yes}
          </BusyButton>
        </div>
      </form>
    </dialog>
  );
}
