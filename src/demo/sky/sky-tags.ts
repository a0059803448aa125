// When and where a part of the sky is seen, as tags that are true for everybody who reads them.
import type { SkyPosition } from "./sky-tables.ts";

const SEASONS = ["spring", "summer", "autumn", "winter"] as const;

/**
 * Degrees of right ascension on the meridian at nine in the evening, local mean time, when northern
 * spring begins: the Sun stands at 0 h, so the sidereal time is 9 h. A season lasts about 90 degrees.
 */
const SPRING_BEGINS = 135;
/** Too near the turn of a season to belong to one, in degrees. */
const DOUBT = 7.5;
/** South of this the stars stay below or close to the horizon at 50° north. */
const SOUTHERN_LIMIT = -40;
/** From here to the pole the stars are up on every night of the year at 50° north. */
const NORTHERN_LIMIT = 65;

/**
 * Tags for a part of the sky: the season in which it stands highest on northern evenings, or "southern
 * sky", or "circumpolar in the north"; none where it falls between two seasons.
 */
export function skyTags({ ra, dec }: SkyPosition): readonly string[] {
  if (dec <= SOUTHERN_LIMIT) return ["southern sky"];
  if (dec >= NORTHERN_LIMIT) return ["circumpolar in the north"];
  const into = (ra - SPRING_BEGINS + 360) % 360;
  const season = SEASONS[Math.floor(into / 90)];
  const within = into % 90;
  return season && within >= DOUBT && within <= 90 - DOUBT ? [`${season} sky`] : [];
}
