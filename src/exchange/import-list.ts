// A list and what came with it, previewed or saved through the use cases.
import { FailureError } from "../app/failure.ts";
import { type FactImport, type ImportOutcome, saveImport } from "../app/import-facts.ts";
import type { Context, Library } from "../app/ports.ts";
import type { ImportChoices, ImportPreview } from "../app/views.ts";
import { contentKey } from "../core/facts/content-key.ts";
import type { FactContent } from "../core/facts/fact.ts";
import { ok, type Result } from "../core/result.ts";
import { type ListMedia, mediaFinder } from "./list-media.ts";
import { createListReader, type ListRefusal, previewList } from "./read-list.ts";
import { isSpreadsheet, readSpreadsheet } from "./read-spreadsheet.ts";
import { isZip, type Parcel, unpackParcel } from "./unpack-parcel.ts";

/** A list as it was handed over: its bytes, and what came with it. */
export interface ListParcel {
  readonly bytes: Uint8Array;
  readonly media: ListMedia;
}

/**
 * The list in some bytes and the files packed with it: a zip file is opened, a spreadsheet becomes a list. Fails with
 * `invalid-input`.
 */
export async function openParcel(bytes: Uint8Array<ArrayBuffer>): Promise<Parcel> {
  if (!isZip(bytes)) return { list: bytes, files: new Map() };
  const parcel = isSpreadsheet(bytes) ? ok({ list: bytes, files: new Map() }) : unpackParcel(bytes);
  if (!parcel.ok) throw new FailureError("invalid-input", parcel.error);
  if (!isSpreadsheet(parcel.value.list)) return parcel.value;
  const list = await readSpreadsheet(parcel.value.list);
  if (!list.ok) throw new FailureError("invalid-input", list.error);
  return { ...parcel.value, list: list.value };
}

/** What the list would bring; nothing is saved. Fails with `invalid-input` if it cannot be read at all. */
export async function previewImport(
  context: Context,
  parcel: ListParcel,
  choices: ImportChoices,
): Promise<ImportPreview> {
  const { stored, known } = await context.store.read(async ({ library }) => ({
    stored: await storedMedia(library),
    known: choices.subject === undefined ? new Set<string>() : new Set(await keysOf(library.eachFact(choices.subject))),
  }));
  return readable(previewList(parcel.bytes, choices, mediaFinder(parcel.media, stored), (key) => known.has(key)));
}

/** Saves the list: all good rows or, if it fails or is stopped, nothing. */
export async function importList(
  context: Context,
  parcel: ListParcel,
  choices: ImportChoices,
  into: Pick<FactImport, "target" | "oneWay">,
  follow: Pick<FactImport, "shouldStop"> & { readonly onProgress?: (done: number, total: number) => void } = {},
): Promise<ImportOutcome> {
  const stored = await context.store.read(({ library }) => storedMedia(library));
  const reader = readable(createListReader(parcel.bytes, choices, mediaFinder(parcel.media, stored)));
  const { onProgress, ...stop } = follow;
  return saveImport(context, {
    ...into,
    rows: reader.drafts(),
    pictures: byHash(parcel.media.pictures),
    sounds: byHash(parcel.media.sounds),
    onProgress: (counts) => onProgress?.(counts.rows, Math.max(counts.rows, reader.estimatedRows)),
    ...stop,
  });
}

const storedMedia = async (library: Library) => ({
  pictures: await library.pictureHashes(),
  sounds: await library.soundHashes(),
});

const byHash = <T extends { readonly hash: string }>(named: ReadonlyMap<string, T>): ReadonlyMap<string, T> =>
  new Map([...named.values()].map((record) => [record.hash, record]));

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
