// The contract of the storage port: one suite that every database passes.
import { describe } from "vitest";
import type { NewDatabase } from "../support/store-database.ts";
import { deliveryContract } from "./delivery-contract.ts";
import { editsContract } from "./edits-contract.ts";
import { factsContract } from "./facts-contract.ts";
import { learnerContract } from "./learner-contract.ts";
import { libraryContract } from "./library-contract.ts";
import { logContract } from "./log-contract.ts";
import { paperContract } from "./paper-contract.ts";
import { paperOrderContract } from "./paper-order-contract.ts";
import { placementContract } from "./placement-contract.ts";
import { printsContract } from "./prints-contract.ts";
import { rechartContract } from "./rechart-contract.ts";
import { transactionContract } from "./transaction-contract.ts";

/** The parts, each with a set-up of its own. */
const PARTS: Readonly<Record<string, (newDatabase: NewDatabase) => void>> = {
  transactions: transactionContract,
  library: libraryContract,
  log: logContract,
  placements: placementContract,
  delivery: deliveryContract,
  facts: factsContract,
  edits: editsContract,
  learners: learnerContract,
  "changes of chart": rechartContract,
  "results from paper": paperContract,
  "results from paper, out of order": paperOrderContract,
  prints: printsContract,
};

/** Runs the whole contract on databases of one kind. */
export function storeContract(name: string, newDatabase: NewDatabase): void {
  describe(`a store on ${name}`, () => {
    // Set-ups of one block would run before every test of it.
    for (const [part, contract] of Object.entries(PARTS)) describe(part, () => contract(newDatabase));
  });
}
