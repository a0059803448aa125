// A button that opens the browser's own chooser of files.
import { useId } from "react";

interface FilePickProps {
  readonly label: string;
  readonly accept: string;
  readonly multiple?: boolean;
  /** Whether a whole folder is chosen. */
  readonly folder?: boolean;
  readonly take: (files: Iterable<File>) => void;
}

/** Lets the reader choose files; the same file may be chosen again. */
export function FilePick({ label, accept, multiple = false, folder = false, take }: FilePickProps) {
  const id = useId();
  return (
    <span className="file-pick">
      <input
        id={id}
        className="visually-hidden"
        type="file"
        accept={accept}
        multiple={multiple}
        {...(folder ? { webkitdirectory: "" } : {})}
        onChange={(event) => {
          take([...(event.target.files ?? [])]);
          event.target.value = "";
        }}
      />
      <label htmlFor={id} className="button">
        {label}
      </label>
    </span>
  );
}
