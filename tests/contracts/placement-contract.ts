import type { NewDatabase } from "../support/store-database.ts";
export function placementContract(_newDatabase: NewDatabase): void {}
