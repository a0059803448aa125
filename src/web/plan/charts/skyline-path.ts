// The outline of a load by day: each day as wide as the next, as high as its cards.

/** Measures of the drawing, without a unit: it is stretched to whatever room there is. */
export const SKYLINE = { width: 100, height: 40 } as const;

/** How high above the ground a number of cards is drawn; `most` reaches the top. */
const height = (cards: number, most: number): number => (most > 0 ? (SKYLINE.height * cards) / most : 0);

/** The y of a number of cards; 0 is at the bottom of the drawing. */
export const skylineY = (cards: number, most: number): number => round(SKYLINE.height - height(cards, most));

/** The outline as a closed SVG path, of as many steps as there are days; empty without days. */
export function skylinePath(byDay: readonly number[], most: number): string {
  if (byDay.length === 0) return "";
  const step = SKYLINE.width / byDay.length;
  const steps = byDay.map((cards, i) => `V${skylineY(cards, most)}H${round((i + 1) * step)}`);
  return `M0 ${SKYLINE.height}${steps.join("")}V${SKYLINE.height}Z`;
}

const round = (n: number): number => Math.round(n * 1000) / 1000;
