// Records a sound with the microphone, lets it be heard, and keeps it or not.
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { BusyButton } from "../shell/busy-button.tsx";

interface RecorderProps {
  /** Told what was recorded; calls `kept` once it is stored, so that nothing is lost before. */
  readonly keep: (recording: Blob, kept: () => void) => void;
  readonly busy: boolean;
}

type State =
  | { readonly kind: "idle" }
  | { readonly kind: "asking" }
  | { readonly kind: "recording"; readonly recorder: MediaRecorder }
  | { readonly kind: "recorded"; readonly blob: Blob; readonly url: string }
  | { readonly kind: "refused"; readonly reason: string };

/** Longest recording; a word or a name takes a few seconds. */
const MOST_MS = 120_000;

/** The buttons of a recording. */
export function Recorder({ keep, busy }: RecorderProps) {
  const [state, setState] = useState<State>({ kind: "idle" });
  const latest = useRef(state);
  const gone = useRef(false);
  useLayoutEffect(() => {
    latest.current = state;
  });
  useEffect(() => {
    gone.current = false;
    return () => {
      gone.current = true;
      // Leaving the page gives the microphone free.
      const left = latest.current;
      if (left.kind === "recording") stopTracks(left.recorder.stream);
      if (left.kind === "recorded") URL.revokeObjectURL(left.url);
    };
  }, []);
  const record = async (): Promise<void> => {
    if (state.kind === "asking") return;
    setState({ kind: "asking" });
    const begun = await startRecording((blob) => {
      if (!gone.current) setState({ kind: "recorded", blob, url: URL.createObjectURL(blob) });
    });
    if (typeof begun === "string") setState({ kind: "refused", reason: begun });
    else if (gone.current) stopTracks(begun.stream);
    else setState({ kind: "recording", recorder: begun });
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
          <BusyButton busy={busy} onClick={() => keep(state.blob, discard)}>
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
          <BusyButton busy={state.kind === "asking"} onClick={() => void record()}>
            Record
          </BusyButton>
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
  try {
    const recorder = new MediaRecorder(stream);
    const parts: Blob[] = [];
    recorder.addEventListener("dataavailable", (event) => parts.push(event.data));
    recorder.addEventListener("stop", () => {
      stopTracks(stream);
      done(new Blob(parts, { type: recorder.mimeType }));
    });
    recorder.start();
    setTimeout(() => recorder.state === "recording" && recorder.stop(), MOST_MS);
    return recorder;
  } catch {
    stopTracks(stream);
    return "This browser cannot record here. Record with another program and choose the file.";
  }
}

function stopTracks(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
