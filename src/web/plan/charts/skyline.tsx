// A load by day as a tiny skyline with a line at its mean.
import { SKYLINE, skylinePath, skylineY } from "./skyline-path.ts";

interface SkylineProps {
  /** Cards on each day. */
  readonly byDay: readonly number[];
  /** Where the line is drawn. */
  readonly mean: number;
  /** What reaches the top, so that several drawings have one scale. */
  readonly most: number;
  /** What it shows, in words. */
  readonly label: string;
}

/** The drawing; it takes the width that there is. */
export function Skyline({ byDay, mean, most, label }: SkylineProps) {
  const y = skylineY(mean, most);
  return (
    <svg
      className="skyline"
      viewBox={`0 0 ${SKYLINE.width} ${SKYLINE.height}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={label}
    >
      <path className="skyline-days" d={skylinePath(byDay, most)} />
      <path className="skyline-mean" d={`M0 ${y}H${SKYLINE.width}`} />
    </svg>
  );
}
