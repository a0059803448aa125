// A picture from the camera of this device.
import { useEffect, useId, useRef, useState } from "react";
import { useModal } from "../../shell/use-modal.ts";

interface CameraProps {
  readonly taken: (picture: Blob) => void;
  readonly close: () => void;
}

/** Shows what the camera sees until the picture is taken. */
export function CameraDialog({ taken, close }: CameraProps) {
  const dialog = useModal();
  const id = useId();
  const video = useRef<HTMLVideoElement>(null);
  const [refused, setRefused] = useState(false);
  useEffect(() => {
    let stream: MediaStream | null = null;
    let wanted = true;
    void openCamera().then((opened) => {
      stream = opened;
      if (!wanted || !opened) stop(opened);
      if (!opened) setRefused(true);
      else if (video.current) video.current.srcObject = opened;
    });
    return () => {
      wanted = false;
      stop(stream);
    };
  }, []);
  const take = (): void => {
    const seen = video.current;
    if (!seen || seen.videoWidth === 0) return;
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [seen.videoWidth, seen.videoHeight];
    canvas.getContext("2d")?.drawImage(seen, 0, 0);
    canvas.toBlob((blob) => blob && taken(blob), "image/jpeg", 0.92);
  };
  return (
    <dialog ref={dialog} className="dialog picture-editor" aria-labelledby={id} onCancel={close}>
      <h2 id={id}>From the camera</h2>
      {refused ? (
        <p role="alert">The camera may not be used, or there is none. Allow it for this page, or choose a picture.</p>
      ) : (
        <video ref={video} autoPlay playsInline muted />
      )}
      <div className="row end">
        <button type="button" onClick={close}>
          Cancel
        </button>
        {refused ? null : (
          <button type="button" className="primary" onClick={take}>
            Take the picture
          </button>
        )}
      </div>
    </dialog>
  );
}

const openCamera = async (): Promise<MediaStream | null> =>
  "mediaDevices" in navigator
    ? navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } }).catch(() => null)
    : null;

function stop(stream: MediaStream | null): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
}
