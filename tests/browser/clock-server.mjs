// The real server on the days of a test: its clock is read from a file, everything else is as shipped.
// Usage: node clock-server.mjs DATA PORT CLOCK-FILE
import { readFileSync } from "node:fs";
import { createLog } from "../../dist/server/logging.js";
import { startServer } from "../../dist/server/start.js";

const [data, port, clockFile] = process.argv.slice(2);
const clock = () => Number(readFileSync(clockFile, "utf8"));
const log = createLog((line) => process.stderr.write(line), clock, "warn");
const server = await startServer({ data, host: "127.0.0.1", port: Number(port), log, clock });
process.stdout.write(`${server.url}\n`);
process.once("SIGTERM", () => server.stop().then(() => process.exit(0)));
