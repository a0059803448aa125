// The pictures and sounds that come with a list: by the names that the list uses, and as they are stored.
import { FailureError } from "../app/failure.ts";
import type { PictureRecord, SoundRecord } from "../app/ports.ts";
import type { PictureHash, SoundHash } from "../core/facts/fact.ts";
import { isSoundName } from "../core/facts/media-names.ts";
import type { Result } from "../core/result.ts";

/** Pictures and sounds as they are stored, by file name. */
export interface ListMedia {
  readonly pictures: ReadonlyMap<string, PictureRecord>;
  readonly sounds: ReadonlyMap<string, SoundRecord>;
}

/** Finds what came with a list, or is stored already, by its bare file name. */
export interface FindMedia {
  readonly picture: (name: string) => PictureHash | null;
  readonly sound: (name: string) => SoundHash | null;
}

/** How files become what is stored; a failure says in words why one cannot be used. */
export interface MediaReaders {
  readonly picture: (bytes: Uint8Array) => Promise<Result<PictureRecord, string>>;
  readonly sound: (bytes: Uint8Array) => Result<SoundRecord, string>;
}

/** Files by name as they are stored; those not called like a sound are pictures. One that cannot be used fails with `invalid-input`. */
export async function usableMedia(
  files: Iterable<readonly [name: string, bytes: Uint8Array]>,
  read: MediaReaders,
): Promise<ListMedia> {
  const pictures = new Map<string, PictureRecord>();
  const sounds = new Map<string, SoundRecord>();
  for (const [name, bytes] of files) {
    if (isSoundName(name)) sounds.set(name, usable(read.sound(bytes), "sound", name));
    else pictures.set(name, usable(await read.picture(bytes), "picture", name));
  }
  return { pictures, sounds };
}

function usable<T>(result: Result<T, string>, what: string, name: string): T {
  if (result.ok) return result.value;
  throw new FailureError("invalid-input", `The ${what} “${name}” cannot be used: ${result.error}`);
}

/** Finds media by the names they came with, or by the content addresses under which they are exported. */
export const mediaFinder = (
  { pictures, sounds }: ListMedia,
  stored: { readonly pictures: ReadonlySet<string>; readonly sounds: ReadonlySet<string> },
): FindMedia => ({ picture: finder(pictures, stored.pictures), sound: finder(sounds, stored.sounds) });

function finder(came: ListMedia["pictures" | "sounds"], stored: ReadonlySet<string>): FindMedia["picture"] {
  const key = (name: string): string => name.normalize("NFC").toLowerCase();
  const byName = new Map([...came].map(([name, { hash }]) => [key(name), hash]));
  return (name) => {
    const hash = /^([0-9a-f]{64})(?:\.\w{2,5})?$/.exec(name)?.[1];
    return byName.get(key(name)) ?? (hash !== undefined && stored.has(hash) ? hash : null);
  };
}
