// A box of paper, kept the way people keep one: a pile for every bundle, and a look at the chart to see
// where a card goes. Written without the product's placement code, to check it from outside.
import type { Chart } from "../../src/core/chart/chart.ts";

/** One answer at the box. */
export interface PilesAnswer {
  readonly card: string;
  readonly pass: "visit" | "introduction" | "second";
  readonly answer: "recalled" | "missed";
}

/** Cards in bundles, moved by hand. */
export class PaperPiles {
  private readonly where = new Map<string, { compartment: number; bundle: number; since: number }>();
  private readonly kept = new Set<string>();

  constructor(private readonly chart: Chart) {}

  /** Moves a card after it was asked on a box day; throws if it was asked when it should not have been. */
  answer({ card, pass, answer }: PilesAnswer, day: number): void {
    if (pass === "second") return;
    if (pass === "introduction") {
      if (this.where.has(card)) throw new Error(`${card} was introduced twice`);
      if (answer === "recalled") this.put(card, 1, day);
      return;
    }
    const place = this.where.get(card);
    if (!place) throw new Error(`${card} was asked but is in no compartment`);
    if (!this.fellDue(place, day)) {
      throw new Error(`day ${day}: ${card} was asked, but bundle ${place.compartment}.${place.bundle} rests`);
    }
    if (answer === "missed") this.put(card, 1, day);
    else if (place.compartment < this.chart.compartments.length) this.put(card, place.compartment + 1, day);
    else {
      this.where.delete(card);
      this.kept.add(card);
    }
  }

  /** Cards in the bundles that the chart names for a day, and those left over from days on which nobody sat. */
  due(day: number): readonly string[] {
    return [...this.where].filter(([, place]) => this.fellDue(place, day)).map(([card]) => card);
  }

  /** Whether a card was ever put into the box. */
  has(card: string): boolean {
    return this.where.has(card) || this.kept.has(card);
  }

  /** Where every card that left the stock is, by card. */
  places(): readonly object[] {
    const inside = [...this.where].map(([card, { compartment, bundle }]) => ({
      card,
      place: "compartment",
      compartment,
      bundle,
    }));
    const out = [...this.kept].map((card) => ({ card, place: "kept", compartment: 0, bundle: 0 }));
    return [...inside, ...out].sort((a, b) => (a.card < b.card ? -1 : 1));
  }

  /** A card joins the bundle that was visited last: today's, or else yesterday's, or the day before … */
  private put(card: string, compartment: number, day: number): void {
    let at = day;
    while (this.bundleOn(compartment, at) === null) at--;
    this.where.set(card, { compartment, bundle: this.bundleOn(compartment, at) as number, since: day });
  }

  /** Whether the chart has named the bundle since the card was put there, today included. */
  private fellDue(place: { compartment: number; bundle: number; since: number }, day: number): boolean {
    for (let at = day; at > place.since; at--) if (this.bundleOn(place.compartment, at) === place.bundle) return true;
    return false;
  }

  /** The bundle of a compartment that the chart names for a day; none on other days. */
  private bundleOn(compartment: number, day: number): number | null {
    const { period, bundles, offset } = this.chart.compartments[compartment - 1] as Chart["compartments"][number];
    for (let bundle = 1; bundle <= bundles; bundle++) {
      const first = offset + (bundle - 1) * (period / bundles);
      if ((((day - first) % period) + period) % period === 0) return bundle;
    }
    return null;
  }
}
