// Records a sound with the microphone, lets it be heard, and keeps it or not.
import { useEffect, useRef, useState } from "react";
import { BusyButton } from "../shell/busy-button.tsx";

interface RecorderProps {
  readonly keep: (recording: Blob) => void;
  readonly busy: boolean;
}

type State =
  | { readonly kind: "idle" }
  | { readonly kind: "recording"; readonly recorder: MediaRecorder }
  | { readonly kind: "recorded"; readonly blob: Blob; readonly url: string }
  | { readonly kind: "refused"; readonly reason: string };

/** Longest recording; a word or a name takes a few seconds. */
const MOST_MS = 120_000;

/** The buttons of a recording. */
export function Recorder({ keep, busy }: RecorderProps) {
  const [state, setState] = useState<State>({ kind: "idle" });
  const latest = useRef(state);
  latest.current = state;
  useEffect(
    () => () => {
      // Leaving the page gives the microphone free.
      const left = latest.current;
      if (left.kind === "recording") stopTracks(left.recorder);
      if (left.kind === "recorded") URL.revokeObjectURL(left.url);
    },
    [],
  );
  const record = async (): Promise<void> => {
    const begun = await startRecording((blob) => setState({ kind: "recorded", blob, url: URL.createObjectURL(blob) }));
    setState(typeof begun === "string" ? { kind: "refused", reason: begun } : { kind: "recording", recorder: begun });
  };
  const discard = (): void => {
    if (state.kind === "recorded") URL.revokeObjectURL(state.url);
    setState({ kind: "idle" });
  };
  switch (state.kind) {
    case "recording":
      return (
        <span className="row" role="status">
          <span className="recording">Recording</span>
          <button type="button" onClick={() => state.recorder.stop()}>
            Stop
          </button>
        </span>
      );
    case "recorded":
      return (
        <span className="row">
          {/* biome-ignore lint/a11y/useMediaCaption: it has just been recorded by the one who hears it */}
          <audio controls src={state.url} />
          <BusyButton
            busy={busy}
            onClick={() => {
              keep(state.blob);
              discard();
            }}
          >
            Keep the recording
          </BusyButton>
          <button type="button" className="quiet" onClick={discard}>
            Discard it
          </button>
        </span>
      );
    default:
      return (
        <>
          <button type="button" onClick={() => void record()}>
            Record
          </button>
          {state.kind === "refused" ? <span role="alert">{state.reason}</span> : null}
        </>
      );
  }
}

/** A recording that has begun, or in words why none has. `done` gets it when it is stopped. */
async function startRecording(done: (blob: Blob) => void): Promise<MediaRecorder | string> {
  if (!("mediaDevices" in navigator) || typeof MediaRecorder === "undefined")
    return "This browser cannot record here. Record with another program and choose the file.";
  const stream = await navigator.mediaDevices.getUserMedia({ audio: true }).catch(() => null);
  if (!stream) return "The microphone may not be used, or there is none. Allow it for this page, or choose a file.";
  const recorder = new MediaRecorder(stream);
  const parts: Blob[] = [];
  recorder.addEventListener("dataavailable", (event) => parts.push(event.data));
  recorder.addEventListener("stop", () => {
    stopTracks(recorder);
    done(new Blob(parts, { type: recorder.mimeType }));
  });
  recorder.start();
  setTimeout(() => recorder.state === "recording" && recorder.stop(), MOST_MS);
  return recorder;
}

function stopTracks(recorder: MediaRecorder): void {
  for (const track of recorder.stream.getTracks()) track.stop();
}
