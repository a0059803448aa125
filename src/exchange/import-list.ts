// A list and the pictures that came with it, previewed or saved through the use cases.
import { FailureError } from "../app/failure.ts";
import { type FactImport, type ImportOutcome, saveImport } from "../app/import-facts.ts";
import type { Context, PictureRecord } from "../app/ports.ts";
import type { ImportChoices, ImportPreview } from "../app/views.ts";
import { contentKey } from "../core/facts/content-key.ts";
import type { FactContent } from "../core/facts/fact.ts";
import { ok, type Result } from "../core/result.ts";
import { createListReader, type ListRefusal, previewList } from "./read-list.ts";
import { isSpreadsheet, readSpreadsheet } from "./read-spreadsheet.ts";
import { isZip, type Parcel, unpackParcel } from "./unpack-parcel.ts";

/** A list as it was handed over: its bytes, and pictures by file name. */
export interface ListParcel {
  readonly bytes: Uint8Array;
  readonly pictures: ReadonlyMap<string, PictureRecord>;
}

/**
 * The list in some bytes and the pictures packed with it: a zip file is opened, a spreadsheet becomes a list. Fails with
 * `invalid-input`.
 */
export async function openParcel(bytes: Uint8Array<ArrayBuffer>): Promise<Parcel> {
  if (!isZip(bytes)) return { list: bytes, pictures: new Map() };
  const parcel = isSpreadsheet(bytes) ? ok({ list: bytes, pictures: new Map() }) : unpackParcel(bytes);
  if (!parcel.ok) throw new FailureError("invalid-input", parcel.error);
  if (!isSpreadsheet(parcel.value.list)) return parcel.value;
  const list = await readSpreadsheet(parcel.value.list);
  if (!list.ok) throw new FailureError("invalid-input", list.error);
  return { ...parcel.value, list: list.value };
}

/** Pictures as they are stored, by file name. One that cannot be used fails with `invalid-input`, naming it. */
export async function usablePictures(
  files: Iterable<readonly [name: string, bytes: Uint8Array]>,
  normalise: (bytes: Uint8Array) => Promise<Result<PictureRecord, string>>,
): Promise<ReadonlyMap<string, PictureRecord>> {
  const pictures = new Map<string, PictureRecord>();
  for (const [name, bytes] of files) {
    const picture = await normalise(bytes);
    if (!picture.ok) throw new FailureError("invalid-input", `The picture “${name}” cannot be used: ${picture.error}`);
    pictures.set(name, picture.value);
  }
  return pictures;
}

/** What the list would bring; nothing is saved. Fails with `invalid-input` if it cannot be read at all. */
export async function previewImport(
  context: Context,
  parcel: ListParcel,
  choices: ImportChoices,
): Promise<ImportPreview> {
  const { stored, known } = await context.store.read(async ({ library }) => ({
    stored: await library.pictureHashes(),
    known: choices.subject === undefined ? new Set<string>() : new Set(await keysOf(library.eachFact(choices.subject))),
  }));
  return readable(previewList(parcel.bytes, choices, pictureFinder(parcel, stored), (key) => known.has(key)));
}

/** Saves the list: all good rows or, if it fails or is stopped, nothing. */
export async function importList(
  context: Context,
  parcel: ListParcel,
  choices: ImportChoices,
  into: Pick<FactImport, "target" | "oneWay">,
  follow: Pick<FactImport, "shouldStop"> & { readonly onProgress?: (done: number, total: number) => void } = {},
): Promise<ImportOutcome> {
  const stored = await context.store.read(({ library }) => library.pictureHashes());
  const reader = readable(createListReader(parcel.bytes, choices, pictureFinder(parcel, stored)));
  const { onProgress, ...stop } = follow;
  return saveImport(context, {
    ...into,
    rows: reader.drafts(),
    pictures: new Map([...parcel.pictures.values()].map((picture) => [picture.hash, picture])),
    onProgress: (counts) => onProgress?.(counts.rows, Math.max(counts.rows, reader.estimatedRows)),
    ...stop,
  });
}

async function keysOf(facts: AsyncIterable<FactContent>): Promise<string[]> {
  const keys: string[] = [];
  for await (const fact of facts) keys.push(contentKey(fact));
  return keys;
}

function readable<T>(result: Result<T, ListRefusal>): T {
  if (result.ok) return result.value;
  const tooLarge = result.error.kind === "too-many-bytes" || result.error.kind === "too-many-rows";
  throw new FailureError(tooLarge ? "too-large" : "invalid-input", result.error.message);
}

/** Finds a picture by the name it came with, or by the content address under which it was exported. */
function pictureFinder({ pictures }: ListParcel, stored: ReadonlySet<string>): (name: string) => string | null {
  const byName = new Map([...pictures].map(([name, picture]) => [name.normalize("NFC").toLowerCase(), picture.hash]));
  return (name) => {
    const came = byName.get(name.normalize("NFC").toLowerCase());
    const hash = /^([0-9a-f]{64})\.\w{2,5}$/.exec(name)?.[1];
    return came ?? (hash !== undefined && stored.has(hash) ? hash : null);
  };
}
