// The facts of one learner: kept, looked for, counted.
import { sql } from "kysely";
import type { FactQuery, FactRecord } from "../app/ports.ts";
import type { Fact } from "../core/facts/fact.ts";
import { batches } from "../core/lists.ts";
import { factFromRow, factToRow } from "./fact-rows.ts";
import { BATCH, type Db } from "./schema.ts";

/** The part of the library that holds the facts of `learner`. */
export function createFactTable(db: Db, learner: string) {
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
      const matching = matchingFacts(db, learner, query);
      const total = await matching.select(({ fn }) => fn.countAll().as("count")).executeTakeFirstOrThrow();
      const page = sliceOf(matching, query).selectAll();
      return { items: (await page.execute()).map((row) => factFromRow(row).fact), total: Number(total.count) };
    },
    async findFactIds(query: FactQuery) {
      const rows = await sliceOf(matchingFacts(db, learner, query), query)
        .select("id")
        .execute();
      return rows.map((row) => row.id);
    },
    async tagsOf(subject: string) {
      const rows = await db
        .selectFrom("fact")
        .select(({ fn }) => ["tags", fn.countAll().as("count")])
        .where("learner_id", "=", learner)
        .where("subject_id", "=", subject)
        .where("deleted", "=", 0)
        .where("tags", "<>", "[]")
        .groupBy("tags")
        .execute();
      const counts = new Map<string, number>();
      for (const { tags, count } of rows)
        for (const tag of JSON.parse(tags) as string[]) counts.set(tag, (counts.get(tag) ?? 0) + Number(count));
      return new Map([...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1)));
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
    async updateFacts(facts: readonly FactRecord[]) {
      for (const fact of facts) {
        const { id, ...row } = factToRow(fact, learner);
        await db.updateTable("fact").set(row).where("id", "=", id).where("learner_id", "=", learner).execute();
      }
    },
  };
}

/** Facts that fit everything that a query asks for. */
function matchingFacts(db: Db, learner: string, query: FactQuery) {
  let matching = db.selectFrom("fact").where("learner_id", "=", learner).where("deleted", "=", 0);
  if (query.subject !== undefined) matching = matching.where("subject_id", "=", query.subject);
  for (const word of query.words)
    matching = matching.where("search", "like", sql<string>`${likePattern(word)} escape '!'`);
  if (query.tag !== undefined) {
    // Not LIKE, which takes a for A in SQLite and not in PostgreSQL.
    matching = matching.where(sql<boolean>`replace(tags, ${JSON.stringify(query.tag)}, '') <> tags`);
  }
  if (query.place !== undefined) matching = matching.where("id", "in", factsInPlace(db, learner, query));
  if (query.among !== undefined) {
    // As one JSON text: there may be more of them than a statement takes parameters.
    const list = isPostgres(db)
      ? sql`select jsonb_array_elements_text(${JSON.stringify(query.among)}::jsonb)`
      : sql`select value from json_each(${JSON.stringify(query.among)})`;
    matching = matching.where(sql<boolean>`fact.id in (${list})`);
  }
  return matching;
}

function factsInPlace(db: Db, learner: string, { place, compartment }: FactQuery) {
  const lying = db
    .selectFrom("placement")
    .select("placement.fact_id")
    .where("placement.learner_id", "=", learner)
    .where("placement.place", "=", place ?? "stock");
  return compartment === undefined ? lying : lying.where("placement.compartment", "=", compartment);
}

const sliceOf = (matching: ReturnType<typeof matchingFacts>, { after, limit }: FactQuery) => {
  const page = matching.orderBy("id", "desc").limit(limit);
  return after === undefined ? page : page.where("id", "<", after);
};

/** The two databases unfold JSON by different names. */
const isPostgres = (db: Db): boolean => db.getExecutor().adapter.supportsTransactionalDdl;

const likePattern = (text: string): string => `%${text.replace(/[!%_]/g, "!$&")}%`;
