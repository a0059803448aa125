// The cached place of every card. Worked out from the log; can be thrown away and rebuilt.
import type { Boxes } from "../app/ports.ts";
import { batches } from "../core/lists.ts";
import { placementFromRow, placementToRow } from "./placement-rows.ts";
import { BATCH, type Db, ownBox } from "./schema.ts";

type PlacementPart = Pick<
  Boxes,
  | "placement"
  | "placements"
  | "savePlacement"
  | "savePlacements"
  | "addPlacements"
  | "eachPlacement"
  | "firstDue"
  | "duePiles"
  | "dueCards"
  | "stock"
  | "countStock"
  | "countPlaces"
  | "waiting"
  | "placed"
>;

/** Everything about a placement but which card's and whose it is. */
const CONTENT = [
  "fact_id",
  "place",
  "from_place",
  "compartment",
  "bundle",
  "due",
  "looked",
  "since",
  "asked_in",
  "last_entry",
  "stock_key",
] as const;

/** The placement part of a learner's boxes. */
export function placementTable(db: Db, learner: string): PlacementPart {
  const rowsOf = (box: string) => db.selectFrom("placement").where("box_id", "=", ownBox(db, learner, box));
  const due = (box: string, day: number) => rowsOf(box).where("place", "=", "compartment").where("due", "<=", day);
  return {
    async placement(box, card) {
      const row = await rowsOf(box).selectAll().where("card_id", "=", card).executeTakeFirst();
      return row ? placementFromRow(row) : null;
    },
    async placements(box, cards) {
      const found = [];
      for (const batch of batches(cards, BATCH)) {
        found.push(...(await rowsOf(box).selectAll().where("card_id", "in", batch).execute()).map(placementFromRow));
      }
      return found;
    },
    async savePlacement(box, placement) {
      const { box_id: _box, card_id: _card, ...rest } = placementToRow(placement, box, learner);
      await db
        .updateTable("placement")
        .set(rest)
        .where("box_id", "=", ownBox(db, learner, box))
        .where("card_id", "=", placement.card)
        .execute();
    },
    async savePlacements(box, placements) {
      for (const batch of batches(placements, BATCH)) {
        await db
          .insertInto("placement")
          .values(batch.map((placement) => placementToRow(placement, box, learner)))
          .onConflict((c) =>
            c
              .columns(["box_id", "card_id"])
              .doUpdateSet((eb) => Object.fromEntries(CONTENT.map((column) => [column, eb.ref(`excluded.${column}`)])))
              .where("placement.learner_id", "=", learner),
          )
          .execute();
      }
    },
    async addPlacements(box, placements) {
      for (const batch of batches(placements, BATCH)) {
        await db
          .insertInto("placement")
          .values(batch.map((placement) => placementToRow(placement, box, learner)))
          .onConflict((c) => c.columns(["box_id", "card_id"]).doNothing())
          .execute();
      }
    },
    async *eachPlacement(box) {
      let after = "";
      for (;;) {
        const rows = await rowsOf(box)
          .selectAll()
          .where("card_id", ">", after)
          .orderBy("card_id")
          .limit(BATCH)
          .execute();
        for (const row of rows) yield placementFromRow(row);
        const last = rows.at(-1);
        if (!last) return;
        after = last.card_id;
      }
    },
    async firstDue(box) {
      const row = await rowsOf(box)
        .select("due")
        .where("place", "=", "compartment")
        .orderBy("due")
        .limit(1)
        .executeTakeFirst();
      return row?.due ?? null;
    },
    async duePiles(box, day) {
      const rows = await due(box, day)
        .select(({ fn }) => ["compartment", "bundle", fn.countAll().as("count")])
        .groupBy(["compartment", "bundle"])
        .orderBy("compartment", "desc")
        .orderBy("bundle")
        .execute();
      return rows.map((row) => ({
        place: "compartment",
        compartment: row.compartment,
        bundle: row.bundle,
        count: Number(row.count),
      }));
    },
    async dueCards(box, day) {
      const rows = await due(box, day).select(["card_id", "fact_id", "compartment", "bundle"]).execute();
      return rows.map((row) => ({
        card: row.card_id,
        fact: row.fact_id,
        compartment: row.compartment,
        bundle: row.bundle,
      }));
    },
    async stock(box, limit) {
      const rows = await rowsOf(box)
        .select(["card_id", "fact_id"])
        .where("place", "=", "stock")
        .orderBy("stock_key")
        .orderBy("card_id")
        .limit(limit)
        .execute();
      return rows.map((row) => ({ card: row.card_id, fact: row.fact_id }));
    },
    async countStock(box) {
      const row = await rowsOf(box)
        .select(({ fn }) => fn.countAll().as("count"))
        .where("place", "=", "stock")
        .executeTakeFirstOrThrow();
      return Number(row.count);
    },
    async countPlaces(box) {
      const rows = await rowsOf(box)
        .select(({ fn }) => ["place", "compartment", "bundle", fn.countAll().as("count")])
        .groupBy(["place", "compartment", "bundle"])
        .execute();
      return rows.map(({ place, compartment, bundle, count }) => ({
        place,
        compartment,
        bundle,
        count: Number(count),
      }));
    },
    async waiting(box) {
      const rows = await rowsOf(box)
        .select(({ fn }) => ["compartment", "due", fn.countAll().as("count")])
        .where("place", "=", "compartment")
        .groupBy(["compartment", "due"])
        .execute();
      return rows.map(({ compartment, due: day, count }) => ({ compartment, due: day, count: Number(count) }));
    },
    async placed(box, { place, compartment, bundle, after, limit }) {
      let query = rowsOf(box).selectAll().where("place", "=", place).orderBy("card_id").limit(limit);
      if (compartment !== undefined) query = query.where("compartment", "=", compartment);
      if (bundle !== undefined) query = query.where("bundle", "=", bundle);
      if (after !== undefined) query = query.where("card_id", ">", after);
      return (await query.execute()).map(placementFromRow);
    },
  };
}
