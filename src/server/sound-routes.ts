// Sounds: stored by their content, heard from any place in them.
import { bodyLimit } from "hono/body-limit";
import { FailureError, found } from "../app/failure.ts";
import type { Context } from "../app/ports.ts";
import { MAX_SOUND_BYTES } from "../media/sound-kind.ts";
import { SOUND_TOO_LARGE, storeSound } from "../media/store-sound.ts";
import { type Api, describeRoute } from "./api-kit.ts";
import { byteRange } from "./byte-range.ts";

/** Adds the routes of sounds. */
export function addSoundRoutes(api: Api, context: Context): void {
  describeRoute(api, {
    method: "post",
    path: "/api/sounds",
    answer: "hash of the stored sound",
    takes: "audio/*",
    gives: "application/json",
  });
  const limit = bodyLimit({
    maxSize: MAX_SOUND_BYTES,
    onError: (c) => c.json({ error: "too-large", message: SOUND_TOO_LARGE }, 413),
  });
  api.post("/api/sounds", limit, async (c) => {
    const bytes = new Uint8Array(await c.req.arrayBuffer());
    const sound = storeSound(bytes);
    if (!sound.ok) throw new FailureError("invalid-input", sound.error);
    await context.store.write(({ library }) => library.addSound(sound.value));
    return c.json({ hash: sound.value.hash });
  });
  describeRoute(api, {
    method: "get",
    path: "/api/sounds/{hash}",
    answer: "the sound, or a range of it",
    gives: "audio/*",
  });
  api.get("/api/sounds/:hash", async (c) => {
    const sound = found(await context.store.read(({ library }) => library.sound(c.req.param("hash"))), "sound");
    const headers = {
      "content-type": sound.mime,
      "accept-ranges": "bytes",
      // The address is the content's own hash, so it can be kept for ever.
      "cache-control": "private, max-age=31536000, immutable",
    };
    const range = byteRange(c.req.header("range"), sound.bytes.length);
    if (range === null) return c.body(new Uint8Array(sound.bytes), 200, headers);
    if (range === "outside") return c.body(null, 416, { "content-range": `bytes */${sound.bytes.length}` });
    const { from, to } = range;
    const part = new Uint8Array(sound.bytes.subarray(from, to + 1));
    return c.body(part, 206, { ...headers, "content-range": `bytes ${from}-${to}/${sound.bytes.length}` });
  });
}
