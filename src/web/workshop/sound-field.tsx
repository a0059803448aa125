// A sound for a fact: recorded or chosen; stored at once, used when the fact is saved.
import { useMutation } from "@tanstack/react-query";
import { api, soundUrl } from "../client.ts";
import { FilePick } from "../shell/file-pick.tsx";
import { Trouble } from "../shell/states.tsx";
import { Recorder } from "./recorder.tsx";

interface SoundFieldProps {
  readonly label: string;
  readonly sound: string | null;
  readonly set: (sound: string | null) => void;
}

/** Plays the sound there is, or takes one. */
export function SoundField({ label, sound, set }: SoundFieldProps) {
  const store = useMutation({ mutationFn: api.addSound, onSuccess: ({ hash }) => set(hash) });
  const take = (files: Iterable<File>): void => {
    const [file] = files;
    if (file) store.mutate(file);
  };
  return (
    <fieldset className="sound-field">
      <legend>{label}</legend>
      {sound ? (
        <>
          {/* biome-ignore lint/a11y/useMediaCaption: the fact's words say what is heard */}
          <audio controls src={soundUrl(sound)} />
          <button type="button" className="quiet" onClick={() => set(null)}>
            Remove the sound
          </button>
        </>
      ) : null}
      <span className="row">
        <Recorder keep={(recording, kept) => store.mutate(recording, { onSuccess: kept })} busy={store.isPending} />
        <FilePick label={sound ? "Choose another sound" : "Choose a sound"} accept="audio/*" take={take} />
      </span>
      {store.error ? <Trouble error={store.error} /> : null}
    </fieldset>
  );
}
