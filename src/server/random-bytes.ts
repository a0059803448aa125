// Randomness from the operating system.
import { randomBytes as systemRandomBytes } from "node:crypto";
import type { Random } from "../app/ports.ts";

/** That many unpredictable bytes. */
export const randomBytes: Random = (count) => new Uint8Array(systemRandomBytes(count));
