// Figures handed to the style sheets.
import type { CSSProperties } from "react";

/** Custom properties as a style; names begin with two dashes. */
export const vars = (values: Readonly<Record<`--${string}`, string | number>>): CSSProperties =>
  values as CSSProperties;

/** How deep compartment k of K lies in the colour ramp, 0 to 1. */
export const depth = (compartment: number, compartments: number): number =>
  compartments > 1 ? (compartment - 1) / (compartments - 1) : 0;

/** The ramp of one compartment: the style sheet mixes the colour, `data-deep` says when type on it is light. */
export function rampProps(compartment: number, compartments: number) {
  const at = depth(compartment, compartments);
  return { style: vars({ "--depth": at }), "data-deep": at > 0.5 ? "" : undefined };
}
