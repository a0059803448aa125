// Unicode's own test files, kept without their comments, from Debian's package unicode-data 15.0.0.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";

/** The lines of a file that say something. */
export function unicodeLines(name: string): readonly string[] {
  const path = fileURLToPath(new URL(`../external/fixtures/unicode-15.0/${name}.txt.gz`, import.meta.url));
  const lines = gunzipSync(readFileSync(path)).toString("utf8").split("\n");
  return lines.filter((line) => line !== "" && !line.startsWith("#"));
}

/** The text that a row of code points in hexadecimal spells. */
export const spelt = (points: string): string =>
  points
    .trim()
    .split(/\s+/u)
    .map((point) => String.fromCodePoint(Number.parseInt(point, 16)))
    .join("");
