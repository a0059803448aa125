// What the schemas of both files are made of.
import { z } from "@hono/zod-openapi";
import { isLocalDate } from "../core/calendar/local-date.ts";
import { isEntryId } from "../core/log/entry-id.ts";

/** The identity of an entry of the log. */
export const entryId = z.string().refine(isEntryId, "must be a UUID version 7 in lower case");
/** The identity of anything else. */
export const id = z.string().min(1).max(80);
/** A date of the calendar. */
export const date = z.string().refine(isLocalDate, "must be a date such as 2026-03-14");
