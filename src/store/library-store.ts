// Subjects, facts, cards and pictures of one learner, over any database the query builder speaks to.
import { type Selectable, sql } from "kysely";
import type { CardRecord, Library, PictureRecord, SubjectRecord } from "../app/ports.ts";
import type { Angle, SpellingRule } from "../core/facts/fact.ts";
import { batches } from "../core/lists.ts";
import { refuseUnstorable } from "./fact-rows.ts";
import { createFactTable } from "./fact-store.ts";
import { forgetPrints } from "./print-store.ts";
import { BATCH, type Db, type Tables } from "./schema.ts";
import { createSoundTable } from "./sound-store.ts";

/** The library of `learner`. */
export function createLibrary(db: Db, learner: string): Library {
  return {
    ...subjectTable(db, learner),
    ...createFactTable(db, learner),
    ...cardTable(db, learner),
    ...pictureTable(db, learner),
    ...createSoundTable(db, learner),
  };
}

function subjectTable(db: Db, learner: string) {
  return {
    async subjects() {
      const rows = await db.selectFrom("subject").selectAll().where("learner_id", "=", learner).orderBy("id").execute();
      return rows.map(toSubject);
    },
    async countBySubject(what: "fact" | "card") {
      const facts = db
        .selectFrom("fact")
        .innerJoin("subject", "subject.id", "fact.subject_id")
        .select(({ fn }) => ["subject.id", fn.countAll().as("count")])
        .where("subject.learner_id", "=", learner)
        .where("fact.deleted", "=", 0)
        .groupBy("subject.id");
      // A card whose angle was given up still has its history, but it is no card to count.
      const chosen = sql<boolean>`fact.angles like '%"' || card.angle || '"%'`;
      const counted = what === "fact" ? facts : facts.innerJoin("card", "card.fact_id", "fact.id").where(chosen);
      return new Map((await counted.execute()).map((row) => [row.id, Number(row.count)]));
    },
    async subject(id: string) {
      const row = await db
        .selectFrom("subject")
        .selectAll()
        .where("id", "=", id)
        .where("learner_id", "=", learner)
        .executeTakeFirst();
      return row ? toSubject(row) : null;
    },
    async saveSubject(subject: SubjectRecord) {
      refuseUnstorable([subject.name]);
      const { name, spelling } = subject;
      const row = { name, demo: subject.demo ? 1 : 0, accents: spelling.accents, letter_case: spelling.letterCase };
      await db
        .insertInto("subject")
        .values({ id: subject.id, learner_id: learner, ...row })
        .onConflict((c) => c.column("id").doUpdateSet(row).where("subject.learner_id", "=", learner))
        .execute();
    },
    /** Removes the subject with its facts and cards, and the pictures and sounds that only they used. */
    async removeSubject(id: string) {
      const used = await db
        .selectFrom("fact")
        .select(["picture", "sound"])
        .where("subject_id", "=", id)
        .where("learner_id", "=", learner)
        .execute();
      await forgetEdits(db, learner, id);
      await forgetPrints(db, learner, id);
      await db.deleteFrom("card").where("subject_id", "=", id).where("learner_id", "=", learner).execute();
      await db.deleteFrom("fact").where("subject_id", "=", id).where("learner_id", "=", learner).execute();
      await db.deleteFrom("subject").where("id", "=", id).where("learner_id", "=", learner).execute();
      for (const kind of ["picture", "sound"] as const)
        await removeUnused(db, learner, kind, new Set(used.flatMap((fact) => fact[kind] ?? [])));
    },
  };
}

/** Removes those of these pictures or sounds that no fact uses; others may belong to a fact that is just being written. */
async function removeUnused(
  db: Db,
  learner: string,
  kind: "picture" | "sound",
  hashes: ReadonlySet<string>,
): Promise<void> {
  for (const batch of batches([...hashes], BATCH)) {
    await db
      .deleteFrom(kind)
      .where("learner_id", "=", learner)
      .where("hash", "in", batch)
      .where("hash", "not in", (q) =>
        q
          .selectFrom("fact")
          .select(sql<string>`${sql.ref(kind)}`.as("hash"))
          .where("learner_id", "=", learner)
          .where(kind, "is not", null),
      )
      .execute();
  }
}

/** Steps of editing forget the facts of a subject; a step that changed nothing else goes too. */
async function forgetEdits(db: Db, learner: string, subject: string): Promise<void> {
  await db
    .deleteFrom("fact_edit")
    .where("learner_id", "=", learner)
    .where("fact_id", "in", (q) => q.selectFrom("fact").select("fact.id").where("subject_id", "=", subject))
    .execute();
  await db
    .deleteFrom("edit")
    .where("learner_id", "=", learner)
    .where("id", "not in", (q) => q.selectFrom("fact_edit").select("edit_id"))
    .execute();
}

const toSubject = (row: Selectable<Tables["subject"]>): SubjectRecord => ({
  id: row.id,
  name: row.name,
  demo: row.demo === 1,
  spelling: { accents: counts(row.accents), letterCase: counts(row.letter_case) },
});

const counts = (text: string): SpellingRule["accents"] => (text === "ignore" ? "ignore" : "count");

function cardTable(db: Db, learner: string) {
  const own = () => db.selectFrom("card").selectAll().where("learner_id", "=", learner);
  return {
    async cards(ids: readonly string[]) {
      const found: CardRecord[] = [];
      for (const batch of batches([...new Set(ids)], BATCH))
        found.push(...(await own().where("id", "in", batch).execute()).map(toCard));
      return found;
    },
    async cardsOfFact(fact: string) {
      return (await own().where("fact_id", "=", fact).orderBy("number").execute()).map(toCard);
    },
    async cardsOfFacts(facts: readonly string[]) {
      const found: CardRecord[] = [];
      for (const batch of batches(facts, BATCH))
        found.push(...(await own().where("fact_id", "in", batch).execute()).map(toCard));
      return found.sort((a, b) => a.number - b.number);
    },
    async cardsOfSubject(subject: string) {
      return (await own().where("subject_id", "=", subject).orderBy("number").execute()).map(toCard);
    },
    async addCards(cards: readonly CardRecord[]) {
      for (const batch of batches(cards, BATCH)) {
        const rows = batch.map(({ id, number, fact, subject, angle }) => ({
          id,
          number,
          learner_id: learner,
          fact_id: fact,
          subject_id: subject,
          angle,
        }));
        await db.insertInto("card").values(rows).execute();
      }
    },
    async moveCards(fact: string, subject: string) {
      await db
        .updateTable("card")
        .set({ subject_id: subject })
        .where("fact_id", "=", fact)
        .where("learner_id", "=", learner)
        .execute();
    },
    async lastCardNumber() {
      const row = await db
        .selectFrom("card")
        .select("number")
        .where("learner_id", "=", learner)
        .orderBy("number", "desc")
        .limit(1)
        .executeTakeFirst();
      return row?.number ?? 0;
    },
  };
}

const toCard = (row: {
  id: string;
  number: number;
  fact_id: string;
  subject_id: string;
  angle: string;
}): CardRecord => ({
  id: row.id,
  number: row.number,
  fact: row.fact_id,
  subject: row.subject_id,
  angle: row.angle as Angle,
});

function pictureTable(db: Db, learner: string) {
  return {
    async picture(hash: string): Promise<PictureRecord | null> {
      const row = await db
        .selectFrom("picture")
        .selectAll()
        .where("learner_id", "=", learner)
        .where("hash", "=", hash)
        .executeTakeFirst();
      return row ? { hash: row.hash, mime: row.mime, width: row.width, height: row.height, bytes: row.bytes } : null;
    },
    async hasPicture(hash: string) {
      const row = await db
        .selectFrom("picture")
        .select("hash")
        .where("learner_id", "=", learner)
        .where("hash", "=", hash)
        .executeTakeFirst();
      return row !== undefined;
    },
    async pictureHashes() {
      const rows = await db.selectFrom("picture").select("hash").where("learner_id", "=", learner).execute();
      return new Set(rows.map((row) => row.hash));
    },
    async addPicture(picture: PictureRecord) {
      const row = { ...picture, bytes: Buffer.from(picture.bytes), learner_id: learner };
      await db
        .insertInto("picture")
        .values(row)
        .onConflict((c) => c.columns(["learner_id", "hash"]).doNothing())
        .execute();
    },
  };
}
