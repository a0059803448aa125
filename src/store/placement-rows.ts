// Cached placements to rows and back.
import type { Selectable } from "kysely";
import type { PlacementRecord } from "../app/ports.ts";
import type { CardState, InCompartment, InStock, Kept, Place } from "../core/box/placement.ts";
import type { Tables } from "./schema.ts";

type PlacementRow = Selectable<Tables["placement"]>;

/** The row that keeps a placement. */
export function placementToRow(record: PlacementRecord, box: string, learner: string): PlacementRow {
  const { place, looked, since, askedIn, lastEntry } = record.state;
  const inside = place.kind === "withdrawn" ? place.from : place;
  return {
    box_id: box,
    card_id: record.card,
    learner_id: learner,
    fact_id: record.fact,
    place: place.kind,
    from_place: place.kind === "withdrawn" ? place.from.kind : null,
    compartment: inside.kind === "compartment" ? inside.compartment : 0,
    bundle: inside.kind === "compartment" ? inside.bundle : 0,
    due: inside.kind === "compartment" ? inside.due : 0,
    looked: looked ? 1 : 0,
    since,
    asked_in: askedIn,
    last_entry: lastEntry,
    stock_key: record.stockKey,
  };
}

/** The placement that a row keeps. */
export function placementFromRow(row: PlacementRow): PlacementRecord {
  const state: CardState = {
    place: placeFromRow(row),
    looked: row.looked === 1,
    since: row.since,
    askedIn: row.asked_in,
    lastEntry: row.last_entry,
  };
  return { card: row.card_id, fact: row.fact_id, state, stockKey: Number(row.stock_key) };
}

function placeFromRow(row: PlacementRow): Place {
  if (row.place === "withdrawn") return { kind: "withdrawn", from: insidePlace(row, row.from_place ?? "stock") };
  return insidePlace(row, row.place);
}

function insidePlace(row: PlacementRow, kind: "stock" | "compartment" | "kept"): InStock | InCompartment | Kept {
  if (kind !== "compartment") return { kind };
  return { kind, compartment: row.compartment, bundle: row.bundle, due: row.due };
}
