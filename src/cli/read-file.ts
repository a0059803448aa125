// A file that was named on the command line.
import { readFileSync } from "node:fs";
import { FailureError } from "../app/failure.ts";

/** The bytes of a file. Fails with `not-found`, in the system's own words. */
export function readFile(file: string): Uint8Array<ArrayBuffer> {
  try {
    return new Uint8Array(readFileSync(file));
  } catch (error) {
    throw new FailureError("not-found", `The file ${file} cannot be read: ${(error as Error).message}.`);
  }
}
