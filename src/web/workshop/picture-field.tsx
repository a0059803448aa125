// A picture for a fact: pasted, dropped or chosen; stored at once, used when the fact is saved.
import { useMutation } from "@tanstack/react-query";
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { api, pictureUrl } from "../client.ts";
import { DropZone } from "../shell/drop-zone.tsx";
import { FilePick } from "../shell/file-pick.tsx";
import { Trouble } from "../shell/states.tsx";
import { CameraDialog } from "./picture-edit/camera-dialog.tsx";
import { BLANK, type Ground, groundOf } from "./picture-edit/paint.ts";
import { PictureEditor } from "./picture-edit/picture-editor.tsx";

interface PictureFieldProps {
  readonly label: string;
  readonly picture: string | null;
  readonly set: (picture: string | null) => void;
}

/** Shows the picture there is, or takes one. */
export function PictureField({ label, picture, set }: PictureFieldProps) {
  const store = useMutation({ mutationFn: api.addPicture, onSuccess: ({ hash }) => set(hash) });
  const [other, setOther] = useState<string | null>(null);
  const take = (files: Iterable<File>): boolean => {
    const all = [...files];
    const image = all.find((file) => file.type.startsWith("image/"));
    setOther(image ? null : (all[0]?.name ?? null));
    if (image) store.mutate(image);
    return image !== undefined;
  };
  usePaste(take);
  const [open, setOpen] = useState<Ground | "camera" | null>(null);
  const close = (): void => setOpen(null);
  const edit = (source: Blob | string): void => void groundOf(source).then(setOpen, close);
  return (
    <fieldset className="picture-field">
      <legend>{label}</legend>
      <DropZone label={label} take={take}>
        {picture ? <img src={pictureUrl(picture)} alt={label} /> : null}
        <FilePick label={picture ? "Choose another picture" : "Choose a picture"} accept="image/*" take={take} />
        <span className="hint">{store.isPending ? "Storing the picture" : "or drop it here, or paste it"}</span>
        <span className="row">
          {picture ? (
            <button type="button" onClick={() => edit(pictureUrl(picture))}>
              Draw on it or cut it
            </button>
          ) : (
            <>
              <button type="button" onClick={() => setOpen(BLANK)}>
                Draw one
              </button>
              <button type="button" onClick={() => setOpen("camera")}>
                Camera
              </button>
            </>
          )}
        </span>
        {picture ? (
          <button type="button" className="quiet" onClick={() => set(null)}>
            Remove the picture
          </button>
        ) : null}
      </DropZone>
      {other ? (
        <p className="field-problem" role="alert" dir="auto">
          “{other}” is not a picture. Choose a file such as a PNG or a JPEG.
        </p>
      ) : null}
      {store.error ? <Trouble error={store.error} /> : null}
      {open === "camera" ? <CameraDialog taken={edit} close={close} /> : null}
      {open && open !== "camera" ? (
        <PictureEditor
          ground={open}
          close={close}
          done={(blob) => {
            store.mutate(blob);
            close();
          }}
        />
      ) : null}
    </fieldset>
  );
}

/** A picture pasted anywhere on the page is meant for the fact. */
function usePaste(take: (files: Iterable<File>) => boolean): void {
  const latest = useRef(take);
  useLayoutEffect(() => {
    latest.current = take;
  });
  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      if (event.clipboardData && latest.current(event.clipboardData.files)) event.preventDefault();
    };
    window.addEventListener("paste", onPaste);
    return () => window.removeEventListener("paste", onPaste);
  }, []);
}
