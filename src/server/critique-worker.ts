// The critique of a large subject beside the server, so that nobody who is practising notices.
import { parentPort, workerData } from "node:worker_threads";
import { critiqueFacts } from "../core/critique/critique-facts.ts";
import type { Fact } from "../core/facts/fact.ts";

parentPort?.postMessage(critiqueFacts(workerData as readonly Fact[]));
