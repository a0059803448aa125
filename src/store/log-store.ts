// The outcome log of one learner's boxes. Entries are added, never changed.
import type { ExpressionBuilder } from "kysely";
import type { Boxes, SittingRecall } from "../app/ports.ts";
import { batches } from "../core/lists.ts";
import { type CardLogEntry, inLogOrder, isCardEntry, type LogEntry } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import { entryFromRow, entryToRow } from "./log-rows.ts";
import { BATCH, type Db, ownBox, type Tables } from "./schema.ts";

type LogPart = Pick<
  Boxes,
  | "entry"
  | "appendEntries"
  | "entriesOfCards"
  | "entriesOfSitting"
  | "entriesOfKind"
  | "eventsOfSitting"
  | "takenBack"
  | "chartChangedSince"
  | "cardsTouchedSince"
  | "cardsSince"
  | "lastEntryId"
  | "countEntries"
  | "eachEntry"
  | "recentVisits"
  | "recentSeconds"
>;

/** Whether an entry has not been taken back. */
const stands = ({ not, exists, selectFrom }: ExpressionBuilder<Tables, "log">) =>
  not(exists(selectFrom("log as back").select("back.id").whereRef("back.target_id", "=", "log.id")));

/** The log part of a learner's boxes. */
export function logTable(db: Db, learner: string): LogPart {
  const own = () => db.selectFrom("log").selectAll().where("learner_id", "=", learner);
  /** One entry behind another, if any stands. */
  const since = (box: string, entry: EntryId) =>
    db
      .selectFrom("log")
      .select("id")
      .where("box_id", "=", ownBox(db, learner, box))
      .where("id", ">", entry)
      .where(stands)
      .limit(1);
  const takenBack: LogPart["takenBack"] = async (ids) => {
    const found = new Set<string>();
    for (const batch of batches(ids, BATCH)) {
      const rows = await own().where("target_id", "in", batch).execute();
      for (const row of rows) if (row.target_id !== null) found.add(row.target_id);
    }
    return found;
  };
  return {
    takenBack,
    async entry(id) {
      const row = await own().where("id", "=", id).executeTakeFirst();
      return row ? entryFromRow(row) : null;
    },
    async appendEntries(entries) {
      for (const batch of batches(entries, BATCH)) {
        await db
          .insertInto("log")
          .values(batch.map((entry) => entryToRow(entry, learner)))
          .execute();
      }
    },
    async entriesOfCards(box, cards) {
      const entries: CardLogEntry[] = [];
      for (const batch of batches(cards, BATCH)) {
        const rows = await own()
          .where("card_id", "in", batch)
          .where("box_id", "=", box)
          .orderBy("card_id")
          .orderBy("id")
          .execute();
        entries.push(...rows.map(entryFromRow).filter(isCardEntry));
      }
      return { entries, takenBack: await takenBack(entries.map((entry) => entry.id)) };
    },
    async entriesOfSitting(sitting) {
      const rows = await own()
        .where((eb) => eb.or([eb("sitting_id", "=", sitting), eb("id", "=", sitting)]))
        .execute();
      const taken = [];
      for (const batch of batches(
        rows.map((row) => row.id),
        BATCH,
      ))
        taken.push(...(await own().where("target_id", "in", batch).execute()));
      return inLogOrder([...rows, ...taken].map(entryFromRow));
    },
    async entriesOfKind(box, kinds) {
      // Entries about no card are few among many, and found by the index that begins with the card.
      const rows = await own()
        .where("card_id", "is", null)
        .where("box_id", "=", box)
        .where("kind", "in", kinds)
        .orderBy("id")
        .execute();
      return rows.map(entryFromRow);
    },
    async eventsOfSitting(sitting) {
      const rows = await own().where("sitting_id", "=", sitting).orderBy("id").execute();
      const gone = await takenBack(rows.map((row) => row.id));
      return rows
        .filter((row) => !gone.has(row.id))
        .map(entryFromRow)
        .filter(isCardEntry) as CardLogEntry[];
    },
    async chartChangedSince(box, entry) {
      const row = await since(box, entry).where("card_id", "is", null).where("kind", "=", "chart").executeTakeFirst();
      return row !== undefined;
    },
    async cardsTouchedSince(box, entry, apartFrom) {
      const row = await since(box, entry)
        .where("card_id", "is not", null)
        .where((eb) =>
          eb.or([
            eb("sitting_id", "is", null),
            apartFrom ? eb("sitting_id", "not in", [...apartFrom]) : eb("sitting_id", ">", entry),
          ]),
        )
        .executeTakeFirst();
      return row !== undefined;
    },
    async cardsSince(box, entry) {
      const rows = await db
        .selectFrom("log")
        .select("card_id")
        .distinct()
        .where("box_id", "=", ownBox(db, learner, box))
        .where("id", ">", entry)
        .where("card_id", "is not", null)
        .execute();
      return rows.flatMap((row) => row.card_id ?? []);
    },
    async lastEntryId(box) {
      const row = await db
        .selectFrom("log")
        .select("id")
        .where("box_id", "=", ownBox(db, learner, box))
        .orderBy("id", "desc")
        .limit(1)
        .executeTakeFirst();
      return row?.id ?? null;
    },
    async countEntries(box) {
      const row = await db
        .selectFrom("log")
        .select(({ fn }) => fn.countAll().as("count"))
        .where("box_id", "=", ownBox(db, learner, box))
        .executeTakeFirstOrThrow();
      return Number(row.count);
    },
    async *eachEntry(box): AsyncIterable<LogEntry> {
      let after = "";
      for (;;) {
        const rows = await own().where("box_id", "=", box).where("id", ">", after).orderBy("id").limit(BATCH).execute();
        for (const row of rows) yield entryFromRow(row);
        const last = rows.at(-1);
        if (!last) return;
        after = last.id;
      }
    },
    async recentVisits(box, limit) {
      const rows = await db
        .selectFrom("log")
        .select(["compartment", "answer", "sitting_id", "card_id"])
        .where("box_id", "=", ownBox(db, learner, box))
        .where("pass", "=", "visit")
        .where(stands)
        .orderBy("id", "desc")
        .limit(limit)
        .execute();
      // Two windows can ask a card twice in a sitting; only the first answer, which comes last here, is evidence.
      const first = new Map(rows.map((row) => [`${row.sitting_id}/${row.card_id}`, row]));
      const counts = new Map<string, SittingRecall>();
      for (const { sitting_id: sitting, compartment, answer } of first.values()) {
        if (sitting === null || compartment === null) continue;
        const key = `${sitting}/${compartment}`;
        const sum = counts.get(key) ?? { sitting, compartment, recalled: 0, missed: 0 };
        const recalled = answer === "recalled" ? 1 : 0;
        counts.set(key, { ...sum, recalled: sum.recalled + recalled, missed: sum.missed + 1 - recalled });
      }
      return [...counts.values()];
    },
    async recentSeconds(box, limit) {
      const rows = await db
        .selectFrom("log")
        .select(["pass", "answer", "seconds"])
        .where("box_id", "=", ownBox(db, learner, box))
        .where("kind", "=", "outcome")
        .where(stands)
        .orderBy("id", "desc")
        .limit(limit)
        .execute();
      return rows.flatMap(({ pass, answer, seconds }) => {
        if (seconds === null || pass === "second") return [];
        const sort = pass === "introduction" ? "fresh" : answer === "missed" ? "missed" : "recalled";
        return [{ sort, seconds } as const];
      });
    },
  };
}
