// A list with its pictures and sounds in one zip file, as the export makes it. Zip files come from outside: what they
// claim is checked before anything is unpacked, and names never become paths.
import { type UnzipFileInfo, unzipSync } from "fflate";
import { isMediaName } from "../core/facts/media-names.ts";
import { fail, ok, type Result } from "../core/result.ts";

/** A list, and the pictures and sounds that lay beside it, by bare file name. */
export interface Parcel {
  readonly list: Uint8Array<ArrayBuffer>;
  readonly files: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
}

/** How much a zip file may hold. */
export const PARCEL_LIMITS = { files: 2_000, bytes: 256 * 1024 * 1024 } as const;

const LIST = /\.(csv|tsv|txt|xlsx)$/i;

/** Whether bytes begin like a zip file. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;

/**
 * Takes a list and what belongs to it out of a zip file. Refused, in words: a file that is broken, holds more than
 * the limits allow or than it says, names places outside itself, or does not hold exactly one list.
 */
export function unpackParcel(bytes: Uint8Array): Result<Parcel, string> {
  let files: Record<string, Uint8Array>;
  const watch = createWatch();
  try {
    files = unzipSync(bytes, { filter: watch.filter });
  } catch (error) {
    const refused = watch.refusal();
    return fail(
      refused ?? `The zip file is broken (${error instanceof Error ? error.message : "unreadable"}). Make it again.`,
    );
  }
  const refusal = watch.refusal();
  if (refusal !== null) return fail(refusal);
  const lists = Object.entries(files).filter(([name]) => LIST.test(name));
  const [list] = lists;
  if (!list || lists.length > 1) {
    return fail(`A zip file must hold exactly one list (.csv, .tsv, .txt or .xlsx); this one holds ${lists.length}.`);
  }
  const media = Object.entries(files).filter(([name]) => isMediaName(name));
  return ok({
    list: new Uint8Array(list[1]),
    files: new Map(media.map(([name, content]) => [bareName(name), new Uint8Array(content)])),
  });
}

const bareName = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

/** Looks at each entry before it is unpacked; stops the unpacking by throwing. */
function createWatch() {
  let count = 0;
  let bytes = 0;
  let refusal: string | null = null;
  const refuse = (words: string): never => {
    refusal = words;
    throw new Error(words);
  };
  const filter = ({ name, originalSize }: UnzipFileInfo): boolean => {
    if (name.includes("\\") || name.startsWith("/") || /^[a-z]:/i.test(name) || name.split("/").includes("..")) {
      refuse(`The zip file names a place outside itself (${name.slice(0, 80)}). Such files are not opened.`);
    }
    if (!LIST.test(name) && !isMediaName(name)) return false;
    count++;
    bytes += originalSize;
    if (count > PARCEL_LIMITS.files) refuse(`The zip file holds more than ${PARCEL_LIMITS.files} files.`);
    if (bytes > PARCEL_LIMITS.bytes)
      refuse(`The zip file would unpack to more than ${PARCEL_LIMITS.bytes / 1024 / 1024} MB.`);
    return true;
  };
  return { filter, refusal: () => refusal };
}
