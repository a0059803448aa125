// Schemas of what goes on paper and comes back from it.
import { z } from "@hono/zod-openapi";
import { CALENDAR_DAYS } from "../app/calendar-days.ts";
import { MOST_CARD_NUMBER } from "../core/cards/card-number.ts";
import { parseNames } from "../core/kit/class-names.ts";
import { KIT_PARTS } from "../core/kit/kit-pages.ts";
import { BLEED_LIMITS, isBleed, parseCardSize, parseSheetSize, type Size } from "../core/kit/paper.ts";
import type { Result } from "../core/result.ts";
import { date, entryId, id } from "./schema-parts.ts";

const cardNumbers = z.array(z.number().int().min(1).max(MOST_CARD_NUMBER)).max(5_000);

export const paperQuerySchema = z.object({ date: date.optional() });

const paperDays = z
  .array(
    z.object({
      date,
      /** Left out: every card that was due. */
      asked: cardNumbers.optional(),
      missed: cardNumbers,
      introduced: cardNumbers.default([]),
    }),
  )
  .max(31);

export const paperDaysSchema = z.object({ days: paperDays.min(1) }).openapi("PaperDays");

/** `before` are days that are to be entered together with this one. */
export const paperDaySchema = z.object({ date: date.optional(), before: paperDays.default([]) }).openapi("PaperDay");

export const paperTakeBackSchema = z.object({ sittings: z.array(entryId).min(1).max(31) }).openapi("PaperTakeBack");

/** The farthest that backs can be moved, in millimetres; a printer that is further off needs mending. */
const MOST_SHIFT = 10;

const shift = z.number().min(-MOST_SHIFT).max(MOST_SHIFT).default(0);

/** A size that the core can read, as it. */
const sized = (parse: (text: string) => Result<Size, string>) =>
  z
    .string()
    .max(40)
    .transform((text, context): Size => {
      const size = parse(text);
      if (size.ok) return size.value;
      context.addIssue({ code: "custom", message: size.error });
      return z.NEVER;
    });

export const kitSchema = z
  .object({
    subjects: z.array(id).max(200),
    only: z.enum(["all", "changed"]).default("all"),
    parts: z.array(z.enum(KIT_PARTS)),
    /** a4, letter, a size such as 200x250mm; null for sheets of the cards' own size. */
    paper: sized(parseSheetSize).nullable(),
    card: sized(parseCardSize),
    turn: z.enum(["long", "short", "fold"]),
    mark: z.enum(["number", "code", "both", "none"]),
    right: shift,
    down: shift,
    /** Millimetres by which a picture that fills a side runs past the cut. */
    bleed: z.number().refine(isBleed, `must be 0, or ${BLEED_LIMITS.least} to ${BLEED_LIMITS.most} mm`).default(0),
    language: z.string().regex(/^[a-z]{2,3}$/, "must be a code of ISO 639 such as en"),
    days: z.number().int().min(1).max(CALENDAR_DAYS.most).default(CALENDAR_DAYS.usual),
    /** One name a line: a box for each of them. */
    names: z
      .string()
      .max(100_000)
      .default("")
      .transform((lines, context): readonly string[] => {
        const names = parseNames(lines);
        if (names.ok) return names.value;
        context.addIssue({ code: "custom", message: names.error });
        return z.NEVER;
      }),
    nameOnCards: z.boolean().default(false),
    /** The first day of the boxes of a class. */
    start: date.nullable().default(null),
  })
  .openapi("KitChoices");

export const kitPreviewSchema = z
  .object({ kit: kitSchema, sheet: z.number().int().min(0).max(1_000_000) })
  .openapi("KitPreviewOrder");

export const kitJobSchema = z.object({ kit: kitSchema, zip: z.boolean().default(false) }).openapi("KitJobOrder");

export const paperCardsQuerySchema = z.object({
  /** Identities of subjects with commas between. */
  subjects: z
    .string()
    .max(20_000)
    .transform((list) => list.split(",").filter((one) => one !== "")),
});

export const missingCardsSchema = z
  .object({ kind: z.enum(["lost", "damaged"]), numbers: cardNumbers.min(1) })
  .openapi("MissingCards");
