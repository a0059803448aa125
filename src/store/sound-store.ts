// The sounds of one learner.
import type { SoundRecord } from "../app/ports.ts";
import type { SoundHash } from "../core/facts/fact.ts";
import type { Db } from "./schema.ts";

/** The part of the library that holds the sounds of `learner`. */
export function createSoundTable(db: Db, learner: string) {
  const own = (hash: SoundHash) => db.selectFrom("sound").where("learner_id", "=", learner).where("hash", "=", hash);
  return {
    async sound(hash: SoundHash): Promise<SoundRecord | null> {
      const row = await own(hash).selectAll().executeTakeFirst();
      return row ? { hash: row.hash, mime: row.mime, bytes: row.bytes } : null;
    },
    async hasSound(hash: SoundHash) {
      return (await own(hash).select("hash").executeTakeFirst()) !== undefined;
    },
    async soundHashes(): Promise<ReadonlySet<SoundHash>> {
      const rows = await db.selectFrom("sound").select("hash").where("learner_id", "=", learner).execute();
      return new Set(rows.map((row) => row.hash));
    },
    async addSound({ hash, mime, bytes }: SoundRecord) {
      await db
        .insertInto("sound")
        .values({ learner_id: learner, hash, mime, bytes: Buffer.from(bytes) })
        .onConflict((c) => c.columns(["learner_id", "hash"]).doNothing())
        .execute();
    },
  };
}
