// Takes a list: pasted, dropped or chosen, with the pictures and sounds that belong to it.
import { useMutation } from "@tanstack/react-query";
import type { ClipboardEvent } from "react";
import { isSoundName } from "../../core/facts/media-names.ts";
import { api } from "../client.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { DropZone } from "../shell/drop-zone.tsx";
import { FilePick } from "../shell/file-pick.tsx";
import { Trouble } from "../shell/states.tsx";
import { counted } from "../words.ts";
import type { ListDraft } from "./list-draft.ts";

/** A longer text, in characters, would make the field slow; it is taken as if it came in a file. */
const MOST_SHOWN = 200_000;
const LIST = /\.(csv|tsv|txt|xlsx|zip)$/iu;
const EXAMPLE = "Vega\tLyra\nDeneb\tCygnus\nAltair\tAquila";

interface ChooserProps {
  readonly list: ListDraft;
  readonly change: (part: Partial<ListDraft>) => void;
  /** Gets the number under which the server holds the list. */
  readonly opened: (id: string) => void;
}

/** Where a list comes in. */
export function ListChooser({ list, change, opened }: ChooserProps) {
  const { text, file, pictures, sounds } = list;
  const send = useMutation({
    mutationFn: () =>
      api.startImport(toForm(file ?? new Blob([text], { type: "text/plain" }), [...pictures, ...sounds])),
    onSuccess: ({ id }) => opened(id),
  });
  const take = (files: Iterable<File>): void => {
    const all = [...files];
    const images = all.filter((one) => one.type.startsWith("image/"));
    const heard = all.filter((one) => isSoundName(one.name));
    // A folder holds other things too.
    const chosen =
      all.find((one) => LIST.test(one.name)) ??
      (all.length === 1 && images.length + heard.length === 0 ? all[0] : undefined);
    if (chosen) change({ file: chosen });
    if (images.length > 0) change({ pictures: [...pictures, ...images] });
    if (heard.length > 0) change({ sounds: [...sounds, ...heard] });
  };
  const paste = (event: ClipboardEvent): void => {
    const pasted = event.clipboardData.getData("text/plain");
    if (pasted.length <= MOST_SHOWN) return;
    event.preventDefault();
    change({ file: new File([pasted], "Pasted list", { type: "text/plain" }) });
  };
  return (
    <>
      <p className="lead">
        One fact a line, its parts in columns: prompt and answer, or a statement with [gaps]. Nothing is saved before
        you have seen the cards and accepted them.
      </p>
      <div className="choosers">
        <section className="sheet" aria-labelledby="paste">
          <h2 id="paste">Paste it</h2>
          <label className="field">
            <span>The list</span>
            <textarea
              className="list-paste"
              dir="auto"
              rows={9}
              value={text}
              placeholder={EXAMPLE}
              disabled={file !== null}
              onChange={(event) => change({ text: event.target.value })}
              onPaste={paste}
            />
          </label>
          <p className="hint">Cells copied from a spreadsheet work as they are.</p>
        </section>
        <section className="sheet" aria-labelledby="file">
          <h2 id="file">Or bring a file</h2>
          <DropZone label="List, pictures and sounds" take={take}>
            <span className="row">
              <FilePick
                label="Choose a list"
                accept=".csv,.tsv,.txt,.xlsx,.zip,text/csv,text/plain,text/tab-separated-values,application/zip"
                take={take}
              />
              <FilePick label="Choose pictures or sounds" accept="image/*,audio/*" multiple take={take} />
              <FilePick label="Choose a folder" accept="" multiple folder take={take} />
            </span>
            <span className="hint">
              or drop them here. Pictures and sounds are found by the names in the list's picture and sound columns.
            </span>
          </DropZone>
          {file ? (
            <p className="chosen">
              <strong dir="auto">{file.name}</strong>
              <button type="button" className="quiet" onClick={() => change({ file: null })}>
                Leave out this file
              </button>
            </p>
          ) : null}
          {pictures.length > 0 ? (
            <p className="chosen">
              {counted(pictures.length, "picture")}
              <button type="button" className="quiet" onClick={() => change({ pictures: [] })}>
                Leave out the pictures
              </button>
            </p>
          ) : null}
          {sounds.length > 0 ? (
            <p className="chosen">
              {counted(sounds.length, "sound")}
              <button type="button" className="quiet" onClick={() => change({ sounds: [] })}>
                Leave out the sounds
              </button>
            </p>
          ) : null}
        </section>
      </div>
      <p className="begin-row">
        <BusyButton
          className="big primary"
          busy={send.isPending || (file === null && text.trim() === "")}
          onClick={() => send.mutate()}
        >
          Read the list
        </BusyButton>
        <span className="hint">This saves nothing yet.</span>
      </p>
      {send.error ? <Trouble error={send.error} retry={() => send.mutate()} /> : null}
    </>
  );
}

function toForm(list: Blob, files: readonly File[]): FormData {
  const form = new FormData();
  form.append("list", list, list instanceof File ? list.name : "list.txt");
  for (const one of files) form.append("files", one, one.name);
  return form;
}
