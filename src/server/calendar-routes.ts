// The calendar that other programs on this machine subscribe to. They send no cookies and no origin; what they
// must know is the address, which holds the box's own identity and so cannot be guessed.
import { createHash } from "node:crypto";
import { etag } from "hono/etag";
import { calendarDays } from "../app/calendar-days.ts";
import type { Context } from "../app/ports.ts";
import { calendarFile } from "../exchange/calendar-file.ts";
import type { Api } from "./api-kit.ts";

/** Where a box's calendar is served. */
export const calendarPath = (box: string): string => `/calendar/${encodeURIComponent(box)}.ics`;

/** Adds the calendar; a program that still has the newest one is told so with status 304. */
export function addCalendarRoutes(api: Api, context: Context): void {
  api.get("/calendar/:file{[^/]*\\.ics}", etag(), async (c) => {
    const box = await context.store.read(({ boxes }) => boxes.box());
    if (!box || c.req.param("file") !== `${box.id}.ics`) {
      return c.text("There is no calendar at this address. longhold calendar says where a box's own is.", 404);
    }
    const text = calendarFile(await calendarDays(context), { stamp: context.clock() });
    return c.body(text, 200, {
      "content-type": "text/calendar; charset=utf-8",
      "cache-control": "private, no-cache",
      etag: tagOf(text),
    });
  });
}

/** The time at which the file was made is no change of what it says: the tag leaves it out, and is weak for that. */
const tagOf = (text: string): string =>
  `W/"${createHash("sha256")
    .update(text.replace(/^DTSTAMP:.*$/gm, ""))
    .digest("hex")}"`;
