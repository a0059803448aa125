// The worker that reads photos, started with the first photo and ended with the page.
import { useCallback, useEffect, useRef } from "react";
import type { PhotoAnswer, PhotoReply, PhotoRequest } from "./photo-worker.ts";

/** Reads one photo; rejects if the worker breaks: a bug, or no memory. */
export type ReadPhoto = (photo: Blob) => Promise<PhotoAnswer>;

/** A reader of photos. */
export function usePhotoWorker(): ReadPhoto {
  const worker = useRef<Worker | null>(null);
  const asked = useRef(0);
  useEffect(() => () => worker.current?.terminate(), []);
  return useCallback((photo) => {
    worker.current ??= new Worker(new URL("./photo-worker.ts", import.meta.url), { type: "module" });
    const own = worker.current;
    const id = ++asked.current;
    return new Promise((resolve, reject) => {
      const onReply = ({ data }: MessageEvent<PhotoReply>): void => {
        if (data.id !== id) return;
        own.removeEventListener("message", onReply);
        resolve(data.answer);
      };
      own.addEventListener("message", onReply);
      own.addEventListener("error", () => {
        own.terminate();
        worker.current = null;
        reject(new Error("The reader of photos stopped"));
      });
      own.postMessage({ id, photo } satisfies PhotoRequest);
    });
  }, []);
}
