// What the demo subject says about the planets: only what stays true.

/** A statement about a planet and a note for its answer side. */
export interface PlanetFact {
  readonly statement: string;
  readonly note: string;
  readonly story: string;
}

/** Where these statements can be looked up. */
export const PLANET_SOURCE = "NASA Planetary Fact Sheet";

const ORDER = [
  ["Mercury", "first", "The first runner in the race has wings on his heels and sunburn."],
  ["Venus", "second", "The second in the row looks into a hand mirror."],
  ["Earth", "third", "The third plate on the table is blue, with crumbs of earth on it."],
  ["Mars", "fourth", "A rusty soldier holds up a fork with four prongs."],
  ["Jupiter", "fifth", "A king fills five chairs all by himself."],
  ["Saturn", "sixth", "Six rings are stacked on a satin cushion."],
  ["Uranus", "seventh", "The seventh sleeper lies on his side."],
  ["Neptune", "eighth", "The sea god stirs an eight into the waves."],
] as const;

/** The order from the Sun, and some things that only one planet can claim. */
export const PLANET_FACTS: readonly PlanetFact[] = [
  ...ORDER.map(([planet, rank, story]) => ({
    statement: `Counted outwards from the Sun, [${planet}] is the [${rank}] planet.`,
    note: "",
    story,
  })),
  {
    statement: "[Jupiter] is the largest planet of the solar system.",
    note: "Its diameter at the equator is about eleven times the Earth's.",
    story: "A king sits down on the bench, and everybody else falls off the end.",
  },
  {
    statement: "[Saturn] is the only planet whose mean density is less than that of [water].",
    note: "About 0.69 grams in a cubic centimetre.",
    story: "A ringed ball is put into the bath, and it floats.",
  },
  {
    statement: "Seen from the ground on Venus, the Sun would rise in the [west].",
    note: "Venus turns on its axis the opposite way to the Earth.",
    story: "The goddess walks out of the door backwards to meet the sunrise.",
  },
  {
    statement: "The axis of [Uranus] lies almost in the plane of its orbit.",
    note: "The tilt is about 98 degrees.",
    story: "A spinning top lies down and rolls along the table like a ball.",
  },
];
