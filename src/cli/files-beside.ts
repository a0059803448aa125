// The pictures and sounds that belong to a list of the command line: packed with it, or lying in a folder.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { isMediaName } from "../core/facts/media-names.ts";
import { type ListMedia, type MediaReaders, usableMedia } from "../exchange/list-media.ts";
import { normalisePicture } from "../media/normalise-picture.ts";
import { storeSound } from "../media/store-sound.ts";

const READERS: MediaReaders = { picture: normalisePicture, sound: storeSound };

/** What a list uses: the files packed with it, and those of a folder whose names occur in it. Others there are not opened. */
export const mediaOf = (
  list: Uint8Array,
  packed: ReadonlyMap<string, Uint8Array>,
  folder: string,
): Promise<ListMedia> => usableMedia([...packed, ...filesBeside(folder, list)], READERS);

function filesBeside(folder: string, list: Uint8Array): readonly (readonly [name: string, bytes: Uint8Array])[] {
  // The encoding is not settled yet: bytes are compared as they are, those of UTF-16 without their zeros.
  const text = new TextDecoder("latin1").decode(list).replaceAll("\u0000", "").toLowerCase();
  const occurs = (name: string): boolean =>
    text.includes(new TextDecoder("latin1").decode(new TextEncoder().encode(name)).toLowerCase());
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    const wanted = isMediaName(name) && [name, name.normalize("NFC"), name.normalize("NFD")].some(occurs);
    return wanted && statSync(path).isFile() ? [[name, new Uint8Array(readFileSync(path))] as const] : [];
  });
}
