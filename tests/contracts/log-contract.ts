import type { NewDatabase } from "../support/store-database.ts";
export function logContract(_newDatabase: NewDatabase): void {}
