// A box of paper, worked as on a table: piles of cards, tabs, and a chart read by eye. It knows nothing of
// due days or logs, so it is an independent check of both. Slow on purpose.
import { bundleVisited, type Chart, compartmentCount, visitsOn } from "../../src/core/chart/chart.ts";

/** One card that was picked up, and where it lay. */
export interface Picked {
  readonly card: string;
  readonly compartment: number;
  readonly bundle: number;
}

/** What the person at the table does; each card taken up is asked, recalled or missed. */
export interface PaperBox {
  /** Practises one day: piles from the highest compartment down, then new cards. */
  sit(day: number, newCards: number, recalls: (picked: Picked) => boolean): void;
  /** Where each card lies, as "stock", "kept" or "compartment/bundle"; a card in two piles is an error. */
  where(): ReadonlyMap<string, string>;
}

/** A box with all its cards in the stock. */
export function createPaperBox(chart: Chart, cards: readonly string[]): PaperBox {
  const stock = [...cards];
  const kept: string[] = [];
  const piles = new Map<string, string[]>();
  const pile = (k: number, bundle: number): string[] => {
    const name = `${k}/${bundle}`;
    const known = piles.get(name) ?? [];
    piles.set(name, known);
    return known;
  };
  /** Looks back through the calendar for the bundle that was visited last, today included. */
  const put = (card: string, k: number, today: number): void => {
    let day = today;
    while (bundleVisited(chart, k, day) === null) day--;
    pile(k, bundleVisited(chart, k, day) ?? 0).push(card);
  };
  const move = (card: string, k: number, day: number): void => {
    if (k > compartmentCount(chart)) kept.push(card);
    else put(card, k, day);
  };
  return {
    sit(day, newCards, recalls) {
      // All piles of the day are taken out before any card is put back, so nothing is met twice.
      const out = visitsOn(chart, day).map((visit) => ({
        ...visit,
        cards: pile(visit.compartment, visit.bundle).splice(0),
      }));
      for (const { compartment, bundle, cards: taken } of out) {
        for (const card of taken) move(card, recalls({ card, compartment, bundle }) ? compartment + 1 : 1, day);
      }
      for (const card of stock.splice(0, newCards)) put(card, 1, day);
    },
    where() {
      const found = new Map<string, string>();
      const note = (card: string, place: string): void => {
        if (found.has(card)) throw new Error(`${card} lies in ${found.get(card)} and in ${place}`);
        found.set(card, place);
      };
      for (const card of stock) note(card, "stock");
      for (const card of kept) note(card, "kept");
      for (const [name, inside] of piles) for (const card of inside) note(card, name);
      return found;
    },
  };
}
