// A subject as a list that can be read again, with its pictures as files beside it.
import { zipSync } from "fflate";
import { found } from "../app/failure.ts";
import type { Context, PictureRecord } from "../app/ports.ts";
import type { Fact } from "../core/facts/fact.ts";
import { writeTable } from "./write-table.ts";

/** An export: the table, and the pictures it names. */
export interface SubjectExport {
  readonly name: string;
  readonly table: string;
  readonly pictures: ReadonlyMap<string, PictureRecord>;
}

const EXTENSIONS: Readonly<Record<string, string>> = { "image/png": "png", "image/jpeg": "jpg", "image/webp": "webp" };

/** Everything in a subject. Fails with `not-found`. */
export const exportSubject = (context: Context, subject: string): Promise<SubjectExport> =>
  context.store.read(async ({ library }) => {
    const { name } = found(await library.subject(subject), "subject");
    const facts: Fact[] = [];
    for await (const fact of library.eachFact(subject)) facts.push(fact);
    const pictures = new Map<string, PictureRecord>();
    const names = new Map<string, string>();
    for (const hash of new Set(facts.flatMap((fact) => (fact.picture === null ? [] : [fact.picture])))) {
      const picture = found(await library.picture(hash), "picture");
      const file = `${hash}.${EXTENSIONS[picture.mime] ?? "bin"}`;
      names.set(hash, file);
      pictures.set(file, picture);
    }
    return { name, table: writeTable(facts, { pictureName: (hash) => names.get(hash) ?? hash }), pictures };
  });

/** The export as one zip file; the same content gives the same bytes. */
export function zipExport({ table, pictures }: SubjectExport): Uint8Array {
  const files: Record<string, Uint8Array> = { "facts.csv": new TextEncoder().encode(table) };
  for (const [name, picture] of pictures) files[`pictures/${name}`] = new Uint8Array(picture.bytes);
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
