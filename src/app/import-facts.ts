// Saving a list that was read: everything or nothing, with progress, and a way to stop.
import { defaultAngles } from "../core/cards/default-angles.ts";
import { contentKey } from "../core/facts/content-key.ts";
import type { Angle, Fact, FactContent } from "../core/facts/fact.ts";
import { counted } from "../core/words.ts";
import { freshId, idSeries } from "./entry-ids.ts";
import { noteEdit } from "./fact-changes.ts";
import { contentHash } from "./fact-record.ts";
import { createSubject, saveNewFacts } from "./facts.ts";
import { FailureError, found } from "./failure.ts";
import type { Context, FactBefore, PictureRecord, Session, SoundRecord } from "./ports.ts";

/** One row of a list that was read. */
export type ImportedRow =
  /** `angles` are those that the row asks for; without any, those of its kind. */
  | { readonly kind: "fact"; readonly content: FactContent; readonly angles?: readonly Angle[] | null }
  | { readonly kind: "duplicate" }
  | { readonly kind: "problems" };

/** An existing subject, or the name of one to be used or made. */
export type ImportTarget = { readonly id: string } | { readonly name: string };

/** What is to be saved, and how to follow it. */
export interface FactImport {
  readonly target: ImportTarget;
  /** Ask what is asked there and back only there; statements are still asked at every gap. */
  readonly oneWay: boolean;
  readonly rows: Iterable<ImportedRow>;
  /** Pictures and sounds that the rows may use, by hash. */
  readonly pictures: ReadonlyMap<string, PictureRecord>;
  readonly sounds: ReadonlyMap<string, SoundRecord>;
  readonly onProgress?: (counts: ImportCounts) => void;
  /** Asked between rows; true rolls everything back and fails with kind `stopped`. */
  readonly shouldStop?: () => boolean;
}

/** Rows so far. */
export interface ImportCounts {
  readonly rows: number;
  readonly saved: number;
  readonly duplicates: number;
  readonly problems: number;
}

/** What an import came to. */
export interface ImportOutcome extends ImportCounts {
  readonly subject: string;
  readonly cards: number;
  /** The step of editing that undoes it; null if nothing was saved. */
  readonly edit: string | null;
}

const BATCH = 500;

/** Saves the good rows that are not there yet, in one transaction; rows with problems are passed over. */
export const saveImport = (context: Context, order: FactImport): Promise<ImportOutcome> =>
  context.store.write(async (session) => {
    const subject = await targetSubject(context, session, order.target);
    const known = new Map<string, readonly string[]>();
    for (const hash of await session.library.contentHashes(subject)) known.set(hash, []);
    // Facts are listed by identity: in a series they keep the order of the list.
    const nextId = idSeries(context);
    const counts = { rows: 0, saved: 0, duplicates: 0, problems: 0 };
    let cards = 0;
    let batch: Fact[] = [];
    const made: FactBefore[] = [];
    const flush = async (): Promise<void> => {
      await saveMedia(session, batch, order);
      cards += await saveNewFacts(session, batch);
      for (const { id } of batch) made.push({ fact: id, before: null });
      counts.saved += batch.length;
      batch = [];
      order.onProgress?.({ ...counts });
    };
    for (const row of order.rows) {
      if (order.shouldStop?.()) throw new FailureError("stopped", "The import was stopped. Nothing was saved.");
      counts.rows++;
      if (row.kind === "problems") counts.problems++;
      else if (row.kind === "duplicate" || (await isKnown(session, subject, known, row.content))) counts.duplicates++;
      else
        batch.push({
          ...row.content,
          id: nextId(),
          subject,
          angles: row.angles ?? anglesFor(row.content, order.oneWay),
        });
      if (batch.length >= BATCH) await flush();
    }
    await flush();
    const edit = await noteEdit(context, session, `Brought ${counted(made.length, "fact")} from a list`, made);
    return { ...counts, cards, subject, edit };
  });

/** Kinds that are asked there and back; of the others each angle asks for something else. */
const ONE_WAY: ReadonlySet<FactContent["kind"]> = new Set(["pair", "picture", "formula"]);

function anglesFor(content: FactContent, oneWay: boolean): readonly Angle[] {
  const all = defaultAngles(content);
  return oneWay && ONE_WAY.has(content.kind) ? all.slice(0, 1) : all;
}

async function targetSubject(context: Context, session: Session, target: ImportTarget): Promise<string> {
  if ("id" in target) return found(await session.library.subject(target.id), "subject").id;
  const existing = (await session.library.subjects()).find((subject) => subject.name === target.name);
  return existing ? existing.id : (await createSubject(session, freshId(context), target.name)).id;
}

/** The hash finds candidates; only an equal key makes a duplicate. */
async function isKnown(
  { library }: Session,
  subject: string,
  known: Map<string, readonly string[]>,
  content: FactContent,
): Promise<boolean> {
  const hash = contentHash(content);
  let keys = known.get(hash);
  if (keys === undefined) return false;
  if (keys.length === 0) {
    keys = (await library.factsByContent(subject, hash)).map(contentKey);
    known.set(hash, keys);
  }
  return keys.includes(contentKey(content));
}

async function saveMedia(
  { library }: Session,
  facts: readonly Fact[],
  { pictures, sounds }: Pick<FactImport, "pictures" | "sounds">,
): Promise<void> {
  for (const { picture, sound } of facts) {
    const seen = picture === null ? undefined : pictures.get(picture);
    if (seen) await library.addPicture(seen);
    const heard = sound === null ? undefined : sounds.get(sound);
    if (heard) await library.addSound(heard);
  }
}
