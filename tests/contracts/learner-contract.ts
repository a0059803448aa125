import type { NewDatabase } from "../support/store-database.ts";
export function learnerContract(_newDatabase: NewDatabase): void {}
