// The tests of running programs need them built; this builds when something has changed.
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** Called by the test runner before everything else. */
export default function buildOnce(): void {
  const script = fileURLToPath(new URL("../../scripts/build.mjs", import.meta.url));
  execFileSync(process.execPath, [script, "--if-needed"], { stdio: "inherit" });
}
