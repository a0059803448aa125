// Subjects, facts, cards and pictures of one learner, over any database the query builder speaks to.
import { sql } from "kysely";
import type { CardRecord, FactQuery, FactRecord, Library, PictureRecord, SubjectRecord } from "../app/ports.ts";
import type { Angle, Fact } from "../core/facts/fact.ts";
import { batches } from "../core/lists.ts";
import { factFromRow, factToRow, refuseUnstorable } from "./fact-rows.ts";
import { BATCH, type Db } from "./schema.ts";

/** The library of `learner`. */
export function createLibrary(db: Db, learner: string): Library {
  return {
    ...subjectTable(db, learner),
    ...factTable(db, learner),
    ...cardTable(db, learner),
    ...pictureTable(db, learner),
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
      const row = { id: subject.id, learner_id: learner, name: subject.name, demo: subject.demo ? 1 : 0 };
      await db
        .insertInto("subject")
        .values(row)
        .onConflict((c) =>
          c.column("id").doUpdateSet({ name: row.name, demo: row.demo }).where("subject.learner_id", "=", learner),
        )
        .execute();
    },
    /** Removes the subject with its facts and cards, and the pictures that nothing uses any more. */
    async removeSubject(id: string) {
      await db.deleteFrom("card").where("subject_id", "=", id).where("learner_id", "=", learner).execute();
      await db.deleteFrom("fact").where("subject_id", "=", id).where("learner_id", "=", learner).execute();
      await db.deleteFrom("subject").where("id", "=", id).where("learner_id", "=", learner).execute();
      await db
        .deleteFrom("picture")
        .where("learner_id", "=", learner)
        .where("hash", "not in", (q) =>
          q
            .selectFrom("fact")
            .select(sql<string>`picture`.as("picture"))
            .where("learner_id", "=", learner)
            .where("picture", "is not", null),
        )
        .execute();
    },
  };
}

const toSubject = (row: { id: string; name: string; demo: number }): SubjectRecord => ({
  id: row.id,
  name: row.name,
  demo: row.demo === 1,
});

function factTable(db: Db, learner: string) {
  const own = () => db.selectFrom("fact").selectAll().where("learner_id", "=", learner);
  return {
    async fact(id: string) {
      const row = await own().where("id", "=", id).executeTakeFirst();
      return row ? factFromRow(row) : null;
    },
    async facts(ids: readonly string[]) {
      const found: FactRecord[] = [];
      for (const batch of batches([...new Set(ids)], BATCH)) {
        found.push(...(await own().where("id", "in", batch).execute()).map(factFromRow));
      }
      return found;
    },
    async findFacts(query: FactQuery) {
      let matching = db.selectFrom("fact").where("learner_id", "=", learner).where("deleted", "=", 0);
      if (query.subject !== undefined) matching = matching.where("subject_id", "=", query.subject);
      for (const word of query.words)
        matching = matching.where("search", "like", sql<string>`${likePattern(word)} escape '!'`);
      if (query.tag !== undefined) {
        // Not LIKE, which takes a for A in SQLite and not in PostgreSQL.
        matching = matching.where(sql<boolean>`replace(tags, ${JSON.stringify(query.tag)}, '') <> tags`);
      }
      const total = await matching.select(({ fn }) => fn.countAll().as("count")).executeTakeFirstOrThrow();
      let page = matching.selectAll().orderBy("id", "desc").limit(query.limit);
      if (query.after !== undefined) page = page.where("id", "<", query.after);
      return { items: (await page.execute()).map((row) => factFromRow(row).fact), total: Number(total.count) };
    },
    async *eachFact(subject: string): AsyncIterable<Fact> {
      let after = "";
      for (;;) {
        const rows = await own()
          .where("subject_id", "=", subject)
          .where("deleted", "=", 0)
          .where("id", ">", after)
          .orderBy("id")
          .limit(BATCH)
          .execute();
        for (const row of rows) yield factFromRow(row).fact;
        const last = rows.at(-1);
        if (!last) return;
        after = last.id;
      }
    },
    async factsByContent(subject: string, contentHash: string) {
      const rows = await own()
        .where("subject_id", "=", subject)
        .where("content_hash", "=", contentHash)
        .where("deleted", "=", 0)
        .execute();
      return rows.map((row) => factFromRow(row).fact);
    },
    async contentHashes(subject: string) {
      const rows = await db
        .selectFrom("fact")
        .select("content_hash")
        .where("learner_id", "=", learner)
        .where("subject_id", "=", subject)
        .where("deleted", "=", 0)
        .execute();
      return new Set(rows.map((row) => row.content_hash));
    },
    async addFacts(facts: readonly FactRecord[]) {
      for (const batch of batches(facts, BATCH)) {
        await db
          .insertInto("fact")
          .values(batch.map((fact) => factToRow(fact, learner)))
          .execute();
      }
    },
    async updateFact(fact: FactRecord) {
      const { id, ...row } = factToRow(fact, learner);
      await db.updateTable("fact").set(row).where("id", "=", id).where("learner_id", "=", learner).execute();
    },
  };
}

const likePattern = (text: string): string => `%${text.replace(/[!%_]/g, "!$&")}%`;

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
