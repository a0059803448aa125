// Where a kit with certain parts is found.
import type { KitPart } from "../../core/kit/kit-pages.ts";

/** The address of a kit with nothing but these parts. */
export const kitAddress = (...parts: readonly KitPart[]): string => `/kit?parts=${parts.join(",")}`;
