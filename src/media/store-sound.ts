// A sound as it is kept: just as it came, once it is known to be one.
import { createHash } from "node:crypto";
import { fail, ok, type Result } from "../core/result.ts";
import { MAX_SOUND_BYTES, soundKind } from "./sound-kind.ts";

/** A sound as it is kept; `hash` is the SHA-256 of `bytes`, lower-case hexadecimal. */
export interface StoredSound {
  readonly hash: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** Why a sound is refused for its size. */
export const SOUND_TOO_LARGE = "The sound is larger than 10 MB. Shorten it.";

/** Checks a sound. Fails with the reason in plain words. */
export function storeSound(bytes: Uint8Array): Result<StoredSound, string> {
  if (bytes.length > MAX_SOUND_BYTES) return fail(SOUND_TOO_LARGE);
  const mime = soundKind(bytes);
  if (mime === null)
    return fail("This is no sound that browsers play. Choose an Ogg, WebM, MP3, M4A, WAV or FLAC file.");
  return ok({ hash: createHash("sha256").update(bytes).digest("hex"), mime, bytes });
}
