// A subject as a list that can be read again, with its pictures and sounds as files beside it.
import { zipSync } from "fflate";
import { found } from "../app/failure.ts";
import type { Context, PictureRecord, SoundRecord } from "../app/ports.ts";
import type { Fact } from "../core/facts/fact.ts";
import { writeTable } from "./write-table.ts";

/** An export: the table, and the pictures and sounds that it names, by file name. */
export interface SubjectExport {
  readonly name: string;
  readonly table: string;
  readonly pictures: ReadonlyMap<string, PictureRecord>;
  readonly sounds: ReadonlyMap<string, SoundRecord>;
}

const EXTENSIONS: Readonly<Record<string, string>> = {
  "image/png": "png",
  "image/jpeg": "jpg",
  "image/webp": "webp",
  "audio/ogg": "ogg",
  "audio/webm": "weba",
  "audio/wav": "wav",
  "audio/flac": "flac",
  "audio/mp4": "m4a",
  "audio/mpeg": "mp3",
};

/** Everything in a subject. Fails with `not-found`. */
export const exportSubject = (context: Context, subject: string): Promise<SubjectExport> =>
  context.store.read(async ({ library }) => {
    const { name } = found(await library.subject(subject), "subject");
    const facts: Fact[] = [];
    for await (const fact of library.eachFact(subject)) facts.push(fact);
    const pictures = await filesOf(facts, "picture", (hash) => library.picture(hash));
    const sounds = await filesOf(facts, "sound", (hash) => library.sound(hash));
    const names = new Map([...pictures, ...sounds].map(([file, { hash }]) => [hash, file]));
    return { name, table: writeTable(facts, { fileName: (hash) => names.get(hash) ?? hash }), pictures, sounds };
  });

/** What the facts show or let hear, each once, named by its content. */
async function filesOf<T extends { readonly hash: string; readonly mime: string }>(
  facts: readonly Fact[],
  kind: "picture" | "sound",
  read: (hash: string) => Promise<T | null>,
): Promise<ReadonlyMap<string, T>> {
  const files = new Map<string, T>();
  for (const hash of new Set(facts.flatMap((fact) => fact[kind] ?? []))) {
    const record = found(await read(hash), kind);
    files.set(`${hash}.${EXTENSIONS[record.mime] ?? "bin"}`, record);
  }
  return files;
}

/** The export as one zip file; the same content gives the same bytes. */
export function zipExport({ table, pictures, sounds }: SubjectExport): Uint8Array {
  const files: Record<string, Uint8Array> = { "facts.csv": new TextEncoder().encode(table) };
  for (const [name, picture] of pictures) files[`pictures/${name}`] = new Uint8Array(picture.bytes);
  for (const [name, sound] of sounds) files[`sounds/${name}`] = new Uint8Array(sound.bytes);
  return zipSync(files, { mtime: "1980-01-01T00:00:00", level: 6 });
}

/** A file name made from a subject's name that every system accepts. */
export function fileName(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return [...plain].slice(0, 60).join("") || "facts";
}
