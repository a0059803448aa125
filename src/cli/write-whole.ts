// Writing a file so that nobody ever finds half of it.
import { existsSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { FailureError } from "../app/failure.ts";

/**
 * Writes a text, or bytes, beside `path` and gives it that name when all of it is there; a file of this name is replaced, or
 * stays as it was if anything fails. Fails with `not-found` if there is no such folder, with `storage` if the
 * system does not let it happen.
 */
export function writeWhole(path: string, content: string | Uint8Array): void {
  const target = targetOf(path);
  const beside = `${target}.${process.pid}.part`;
  try {
    writeFileSync(beside, content, { flag: "wx", flush: true });
    renameSync(beside, target);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    // A file that was there before is somebody else's.
    if (code !== "EEXIST") rmSync(beside, { force: true });
    throw new FailureError("storage", `${path} cannot be written: ${message}.`);
  }
}

/** Where the file really is: a link stays a link, and what it names is replaced. */
function targetOf(path: string): string {
  const folder = dirname(resolve(path));
  if (!existsSync(folder)) throw new FailureError("not-found", `There is no folder ${folder} to write ${path} in.`);
  if (!existsSync(path)) return resolve(path);
  if (statSync(path).isFile()) return realpathSync(path);
  throw new FailureError("storage", `${path} is there already and is no file. Name a file to write.`);
}
