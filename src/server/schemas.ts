// One schema for every input of the HTTP API; those of paper are in `paper-schemas.ts`. The pages import their types, the server parses with them,
// and the OpenAPI document is made from them.
import { z } from "@hono/zod-openapi";
import { COLUMNS } from "../app/views.ts";
import { isTimeZone } from "../core/calendar/local-date.ts";
import { checkChart } from "../core/chart/chart.ts";
import { RULES } from "../core/critique/note.ts";
import { isAngle } from "../core/facts/angle-name.ts";
import { MOST_PARTS } from "../core/facts/check-content.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import { isLanguageTag } from "../core/facts/language-tag.ts";
import { TEXT_FIELDS } from "../core/facts/text-fields.ts";
import { LONGEST_FORMULA } from "../core/text/formula-limits.ts";
import { date, entryId, id } from "./schema-parts.ts";

/** Longest text of one field of a fact, in UTF-16 code units. */
export const MAX_TEXT = 5_000;

/** Text as it is kept: the same tidying that a list gets, so that an export reads back as it was. */
const text = z.string().max(MAX_TEXT).transform(cleanText);
const filled = text.refine((value) => value.trim() !== "", "must not be empty");
const cardId = z
  .string()
  .min(3)
  .max(120)
  .regex(/^[^:]+:[a-z0-9-]+$/, "must be a fact and an angle, fact:angle");
const pictureHash = z.string().regex(/^[0-9a-f]{64}$/, "must be the SHA-256 of a stored picture");
const soundHash = z.string().regex(/^[0-9a-f]{64}$/, "must be the SHA-256 of a stored sound");
const line = text.refine((value) => !value.includes("\n"), "must be a single line");
const partNumber = z.number().int().min(1).max(1_000_000);
const share = z.number().min(0).max(1);
const counts = z.enum(["count", "ignore"]).default("count");
const day = z.number().int().min(1).max(10_000_000);

const extras = {
  note: text.default(""),
  source: text.default(""),
  story: text.default(""),
  why: text.default(""),
  language: z.string().refine(isLanguageTag, "must be a language tag such as en or pt-BR").default(""),
  pictureAlt: text.default(""),
  pictureSource: text.default(""),
  pictureLicence: text.default(""),
  sound: soundHash.nullable().default(null),
  // Lists write tags with commas or semicolons between them, so neither can be part of one.
  tags: z
    .array(
      z
        .string()
        .max(60)
        .regex(/^[^,;]*$/, "must not hold a comma or semicolon")
        .transform(cleanText),
    )
    .max(20)
    .transform((tags) => [...new Set(tags.filter((tag) => tag !== ""))])
    .default([]),
};

const picture = pictureHash.nullable().default(null);

export const factContentSchema = z
  .discriminatedUnion("kind", [
    z.object({ ...extras, kind: z.literal("pair"), prompt: filled, answer: filled, picture }),
    z.object({
      ...extras,
      kind: z.literal("statement"),
      statement: filled,
      // Numbers that come along only say which angle means which gap.
      gaps: z.array(partNumber).max(1000).optional(),
      picture,
    }),
    z.object({ ...extras, kind: z.literal("picture"), name: filled, picture: pictureHash }),
    z.object({
      ...extras,
      kind: z.literal("list"),
      title: filled,
      items: z.array(line).max(MOST_PARTS),
      numbers: z.array(partNumber).max(MOST_PARTS).optional(),
      picture,
    }),
    z.object({
      ...extras,
      kind: z.literal("formula"),
      name: filled,
      formula: filled.refine((value) => value.length <= LONGEST_FORMULA, "is too long"),
      picture,
    }),
    z.object({
      ...extras,
      kind: z.literal("spelling"),
      clue: text.default(""),
      word: filled,
      accents: counts,
      letterCase: counts,
      picture,
    }),
    z.object({ ...extras, kind: z.literal("sound"), name: filled, sound: soundHash, picture }),
    z.object({
      ...extras,
      kind: z.literal("labelled"),
      picture: pictureHash,
      labels: z
        .array(z.object({ number: partNumber, name: line, x: share, y: share, width: share, height: share }))
        .max(MOST_PARTS),
    }),
  ])
  .openapi("FactContent");

export const angleSchema = z.string().refine(isAngle, "must be an angle such as forward or gap-1");

export const newFactSchema = z
  .object({ id: entryId, subject: id, content: factContentSchema, angles: z.array(angleSchema).max(1000).optional() })
  .openapi("NewFact");

export const newFactsSchema = z
  .object({
    subject: id,
    facts: z
      .array(z.object({ id: entryId, content: factContentSchema }))
      .min(1)
      .max(500),
  })
  .openapi("NewFacts");

export const editFactSchema = z
  .object({ content: factContentSchema, angles: z.array(angleSchema).max(1000).optional() })
  .openapi("EditFact");

const countsSchema = z.enum(["count", "ignore"]);

export const subjectSpellingSchema = z
  .object({ accents: countsSchema, letterCase: countsSchema, following: z.boolean().default(true) })
  .openapi("SubjectSpelling");

export const subjectSchema = z
  .object({
    name: z
      .string()
      .max(120)
      .transform(cleanText)
      .refine((name) => name !== "", "must not be empty"),
  })
  .openapi("SubjectName");

const calendarChange = {
  timeZone: z.string().max(80).refine(isTimeZone, "must be a time zone such as Europe/Lisbon"),
  rollOverHour: z.number().int().min(0).max(23),
  restWeekdays: z.array(z.number().int().min(1).max(7)).max(6, "at least one weekday must be left for practice"),
  restDates: z
    .array(
      z
        .object({ from: date, to: date })
        .refine((range) => range.from <= range.to, "a range must not end before it begins"),
    )
    .max(500),
  policy: z.enum(["chart-waits", "chart-goes-on"]),
};

const chartSchema = z
  .object({
    compartments: z
      .array(z.object({ period: z.number(), bundles: z.number(), offset: z.number() }))
      .min(1)
      .max(20),
  })
  .superRefine((chart, context) => {
    const checked = checkChart(chart);
    if (!checked.ok) context.addIssue({ code: "custom", message: checked.error });
  });

export const setUpSchema = z
  .object({
    timeZone: calendarChange.timeZone,
    chart: chartSchema.optional(),
    newPerDay: z.number().int().min(0).max(1000).optional(),
  })
  .openapi("SetUpBox");

export const changeChartSchema = z.object({ chart: chartSchema }).openapi("ChangeChart");

export const settingsSchema = z
  .object({ ...calendarChange, newPerDay: z.number().int().min(0).max(1000) })
  .partial()
  .openapi("BoxSettings");

export const beginSchema = z
  .object({ id: entryId, newCards: z.number().int().min(0).max(1000) })
  .openapi("BeginSitting");

const entryBase = { id: entryId, box: id, at: z.number().int().nonnegative() };

/** Entries that a page may send. Set-up, settings, chart and begin entries are made by their own routes. */
export const logEntrySchema = z
  .discriminatedUnion("kind", [
    z.object({ ...entryBase, kind: z.literal("look"), card: cardId, day, sitting: entryId }),
    z.object({
      ...entryBase,
      kind: z.literal("outcome"),
      card: cardId,
      day,
      sitting: entryId,
      pass: z.enum(["visit", "introduction", "second"]),
      answer: z.enum(["recalled", "missed"]),
      compartment: z.number().int().min(0).max(20),
      bundle: z.number().int().min(0).max(100_000),
      seconds: z.number().nonnegative().max(86_400).nullable(),
    }),
    z.object({ ...entryBase, kind: z.literal("finish"), sitting: entryId }),
    z.object({ ...entryBase, kind: z.literal("take-back"), entry: entryId }),
    z.object({
      ...entryBase,
      kind: z.literal("move"),
      card: cardId,
      day,
      to: z.union([z.number().int().min(1).max(20), z.literal("kept"), z.literal("stock")]),
    }),
    z.object({
      ...entryBase,
      kind: z.literal("withdraw"),
      card: cardId,
      day,
      reason: z.literal("hand").default("hand"),
    }),
    z.object({ ...entryBase, kind: z.literal("bring-back"), card: cardId, day }),
  ])
  .openapi("LogEntry");

export const logSchema = z.object({ entries: z.array(logEntrySchema).min(1).max(500) }).openapi("LogEntries");

export const cardIdsSchema = z.object({ ids: z.array(cardId).max(200) }).openapi("CardIds");

const limit = z.coerce.number().int().min(1).max(500).default(100);

export const noteKeysSchema = z
  .object({ keys: z.array(z.string().min(1).max(300)).min(1).max(500) })
  .openapi("NoteKeys");

const factFilter = {
  subject: id.optional(),
  search: z.string().max(200).optional(),
  tag: z.string().max(60).optional(),
  place: z.enum(["stock", "compartment", "kept", "withdrawn"]).optional(),
  compartment: z.coerce.number().int().min(1).max(20).optional(),
  /** Facts about which this rule of the critique speaks; needs the subject. */
  note: z.enum(RULES).optional(),
};

export const factQuerySchema = z.object({ ...factFilter, after: z.string().max(200).optional(), limit });

export const bulkSchema = z
  .object({
    /** By name, or all that fit a search. */
    chosen: z.union([z.object({ facts: z.array(id).min(1).max(20_000) }), z.object({ fitting: z.object(factFilter) })]),
    change: z.discriminatedUnion("kind", [
      z.object({
        kind: z.literal("replace"),
        find: z.string().min(1).max(500),
        by: z.string().max(500),
        matchCase: z.boolean().default(false),
        wholeWords: z.boolean().default(false),
        fields: z.array(z.enum(TEXT_FIELDS)).min(1).optional(),
      }),
      z.object({ kind: z.literal("tags"), add: extras.tags, remove: extras.tags }),
      z.object({ kind: z.literal("move"), subject: id }),
      z.object({ kind: z.literal("delete") }),
      z.object({ kind: z.literal("fix"), rule: z.enum(RULES) }),
      z.object({ kind: z.literal("merge"), into: id }),
    ]),
  })
  .openapi("BulkEdit");

export const boxCardsQuerySchema = z.object({
  place: z.enum(["stock", "compartment", "kept", "withdrawn"]),
  compartment: z.coerce.number().int().min(1).max(20).optional(),
  bundle: z.coerce.number().int().min(1).max(100_000).optional(),
  after: z.string().max(200).optional(),
  limit,
});

export const importChoicesSchema = z
  .object({
    encoding: z.enum(["utf-8", "utf-16le", "utf-16be", "windows-1252"]),
    delimiter: z.enum([",", "\t", ";"]),
    header: z.boolean(),
    columns: z.array(z.enum(COLUMNS).nullable()).max(100),
    /** A subject that exists: facts it holds already count as duplicates. */
    subject: id,
  })
  .partial()
  .openapi("ImportChoices");

export const acceptImportSchema = z
  .object({
    choices: importChoicesSchema,
    /** A subject that exists, or the name of a new one. */
    subject: z.union([z.object({ id }), subjectSchema]),
    /** Ask pairs from prompt to answer only, and pictures for their names only. */
    oneWay: z.boolean().default(false),
  })
  .openapi("AcceptImport");
