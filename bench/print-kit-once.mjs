// Prints one kit with the built program, for the measurement of printing: ORDER (a plan and its pictures) to PDF.
import { readFileSync, writeFileSync } from "node:fs";
import { deserialize } from "node:v8";
import { printKitInWorker } from "../dist/kit/print-kit-in-worker.js";

const [, , order, pdf] = process.argv;
const { plan, pictures } = deserialize(readFileSync(order));
const kit = await printKitInWorker(plan, pictures);
for (const notice of kit.notices) process.stderr.write(`${notice}\n`);
writeFileSync(pdf, kit.pdf);
