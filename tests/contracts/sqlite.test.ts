import { newSqliteDatabase } from "../support/sqlite-database.ts";
import { storeContract } from "./store-contract.ts";

storeContract("SQLite", newSqliteDatabase);
