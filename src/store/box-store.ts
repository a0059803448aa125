// Boxes and sittings of one learner.
import type { Selectable } from "kysely";
import type { Boxes, BoxRecord, SittingRecord } from "../app/ports.ts";
import type { Calendar } from "../core/calendar/calendar.ts";
import type { Chart } from "../core/chart/chart.ts";
import { logTable } from "./log-store.ts";
import { placementTable } from "./placement-store.ts";
import type { Db, Tables } from "./schema.ts";

/** The boxes of `learner`, with their logs and what is cached from them. */
export function createBoxes(db: Db, learner: string): Boxes {
  return {
    ...boxTable(db, learner),
    ...logTable(db, learner),
    ...sittingTable(db, learner),
    ...placementTable(db, learner),
  };
}

function boxTable(db: Db, learner: string) {
  return {
    async box(): Promise<BoxRecord | null> {
      const row = await db
        .selectFrom("box")
        .selectAll()
        .where("learner_id", "=", learner)
        .orderBy("id")
        .executeTakeFirst();
      if (!row) return null;
      return {
        id: row.id,
        chart: JSON.parse(row.chart) as Chart,
        calendar: JSON.parse(row.calendar) as Calendar,
        newPerDay: row.new_per_day,
        seed: row.seed,
      };
    },
    async saveBox(box: BoxRecord) {
      const settings = {
        chart: JSON.stringify(box.chart),
        calendar: JSON.stringify(box.calendar),
        new_per_day: box.newPerDay,
        seed: box.seed,
      };
      await db
        .insertInto("box")
        .values({ id: box.id, learner_id: learner, ...settings })
        .onConflict((c) => c.column("id").doUpdateSet(settings).where("box.learner_id", "=", learner))
        .execute();
    },
    /** Removes a box with its log and everything cached from it. */
    async removeBox(id: string) {
      for (const table of ["placement", "sitting", "log", "box_subject"] as const) {
        await db.deleteFrom(table).where("box_id", "=", id).where("learner_id", "=", learner).execute();
      }
      await db.deleteFrom("box").where("id", "=", id).where("learner_id", "=", learner).execute();
    },
    async forgetSubject(box: string, subject: string) {
      const cards = db
        .selectFrom("card")
        .select("id")
        .where("subject_id", "=", subject)
        .where("learner_id", "=", learner);
      const entries = db.selectFrom("log").select("id").where("box_id", "=", box).where("card_id", "in", cards);
      await db.deleteFrom("log").where("box_id", "=", box).where("target_id", "in", entries).execute();
      await db.deleteFrom("log").where("box_id", "=", box).where("card_id", "in", cards).execute();
      await db.deleteFrom("placement").where("box_id", "=", box).where("card_id", "in", cards).execute();
      await db.deleteFrom("box_subject").where("box_id", "=", box).where("subject_id", "=", subject).execute();
    },
    async subjectsInBox(box: string) {
      const rows = await db
        .selectFrom("box_subject")
        .select("subject_id")
        .where("box_id", "=", box)
        .where("learner_id", "=", learner)
        .execute();
      return rows.map((row) => row.subject_id);
    },
    async addSubjectToBox(box: string, subject: string) {
      await db
        .insertInto("box_subject")
        .values({ box_id: box, subject_id: subject, learner_id: learner })
        .onConflict((c) => c.columns(["box_id", "subject_id"]).doNothing())
        .execute();
    },
  };
}

function sittingTable(db: Db, learner: string) {
  const own = () => db.selectFrom("sitting").selectAll().where("learner_id", "=", learner);
  return {
    async sitting(id: string) {
      const row = await own().where("id", "=", id).executeTakeFirst();
      return row ? toSitting(row) : null;
    },
    async saveSitting(box: string, { id, date, day, newCards, fresh, finished, asked, touched }: SittingRecord) {
      const row = {
        date,
        day,
        new_cards: newCards,
        fresh: JSON.stringify(fresh),
        finished: finished ? 1 : 0,
        asked,
        touched,
      };
      await db
        .insertInto("sitting")
        .values({ id, box_id: box, learner_id: learner, ...row })
        .onConflict((c) => c.column("id").doUpdateSet(row).where("sitting.learner_id", "=", learner))
        .execute();
    },
    async sittings(box: string) {
      return (await own().where("box_id", "=", box).orderBy("id").execute()).map(toSitting);
    },
    async sittingsBetween(box: string, from: string, to: string) {
      const rows = await own()
        .where("box_id", "=", box)
        .where("date", ">=", from)
        .where("date", "<=", to)
        .orderBy("id")
        .execute();
      return rows.map(toSitting);
    },
    async lastSitting(box: string, until: string) {
      const row = await own()
        .where("box_id", "=", box)
        .where("date", "<=", until)
        .where((eb) => eb.or([eb("asked", ">", 0), eb("touched", ">", 0)]))
        .orderBy("date", "desc")
        .orderBy("id", "desc")
        .limit(1)
        .executeTakeFirst();
      return row ? toSitting(row) : null;
    },
    async removeSittings(box: string) {
      await db.deleteFrom("sitting").where("box_id", "=", box).where("learner_id", "=", learner).execute();
    },
  };
}

const toSitting = (row: Selectable<Tables["sitting"]>): SittingRecord => ({
  id: row.id,
  date: row.date,
  day: row.day,
  newCards: row.new_cards,
  fresh: JSON.parse(row.fresh) as string[],
  finished: row.finished === 1,
  asked: row.asked,
  touched: row.touched,
});
