import type { NewDatabase } from "../support/store-database.ts";
export function factsContract(_newDatabase: NewDatabase): void {}
