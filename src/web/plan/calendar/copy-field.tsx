// A text to be taken elsewhere.
import { useId, useRef } from "react";
import { useNotify } from "../../shell/notices.tsx";

/** A field that is only read, with a button that copies it; where the browser does not let it, selects it. */
export function CopyField({ label, text }: { readonly label: string; readonly text: string }) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const notify = useNotify();
  const copy = async (): Promise<void> => {
    // Without a safe connection there is no clipboard at all.
    const copied = await (navigator.clipboard as Clipboard | undefined)?.writeText(text).then(
      () => true,
      () => false,
    );
    if (copied) return notify("The address is copied.");
    field.current?.select();
    notify("This browser does not let pages copy. The address is selected: copy it with Ctrl+C or ⌘C.");
  };
  return (
    <div className="field copy-field">
      <label htmlFor={id}>{label}</label>
      <div className="copy-row">
        <input id={id} ref={field} readOnly value={text} onFocus={(event) => event.target.select()} />
        <button type="button" onClick={() => void copy()}>
          Copy
        </button>
      </div>
    </div>
  );
}
