// All requests to the server: one function for each route. Trouble is thrown as an ApiError in plain words.
import type { input } from "zod";
import type { PrintStep } from "../app/print-port.ts";
import type { CardPaperView, FactPaperView, PaperCardsView } from "../app/print-versions.ts";
import type { KitJobView, KitPreview } from "../app/print-views.ts";
import type {
  AheadView,
  BoxView,
  BulkPreview,
  BulkResult,
  CardHistory,
  ChartChange,
  DrawerView,
  EditView,
  FactNotes,
  FactVersion,
  ImportPreview,
  ImportStatus,
  Page,
  PaperDayView,
  PaperOutcome,
  PlacedCard,
  PlanView,
  Receipt,
  RuleCount,
  SittingView,
  SpellingChange,
  SubjectView,
  TodayView,
} from "../app/views.ts";
import type { Card } from "../core/cards/cards.ts";
import type { Fact, SpellingRule } from "../core/facts/fact.ts";
import type { kitSchema, missingCardsSchema, paperDaysSchema } from "../server/paper-schemas.ts";
import type {
  acceptImportSchema,
  beginSchema,
  bulkSchema,
  changeChartSchema,
  editFactSchema,
  importChoicesSchema,
  logEntrySchema,
  newFactSchema,
  newFactsSchema,
  settingsSchema,
  setUpSchema,
} from "../server/schemas.ts";
import { noteAnswering } from "./data/connection.ts";
import { noteId } from "./data/new-id.ts";

/** A fact as it is first written. */
export type NewFact = input<typeof newFactSchema>;
/** Facts that are written together. */
export type NewFacts = input<typeof newFactsSchema>;
/** A kit as it is chosen. */
export type KitOrder = input<typeof kitSchema>;
/** Paper cards that are lost or damaged. */
export type MissingCards = input<typeof missingCardsSchema>;
/** Results of days on paper. */
export type PaperDays = input<typeof paperDaysSchema>["days"];
/** A fact as it is reworded. */
export type EditFact = input<typeof editFactSchema>;
/** The wording that the server takes; it numbers gaps itself. */
export type FactInput = NewFact["content"];
/** A change to many facts. */
export type BulkOrder = input<typeof bulkSchema>;
/** What may be changed about a box. */
export type BoxSettings = input<typeof settingsSchema>;
/** A log entry that a page may send. */
export type SentEntry = input<typeof logEntrySchema>;
/** How a list is to be read. */
export type Choices = input<typeof importChoicesSchema>;
/** Where an import goes. */
export type AcceptImport = input<typeof acceptImportSchema>;

/** A request that failed. `unreachable` means that no answer came at all. */
export class ApiError extends Error {
  readonly kind: string;
  readonly status: number;

  constructor(kind: string, message: string, status: number) {
    super(message);
    this.name = "ApiError";
    this.kind = kind;
    this.status = status;
  }
}

/** Whether an error means that the server cannot be reached just now. */
export const isUnreachable = (error: unknown): boolean => error instanceof ApiError && error.kind === "unreachable";

type Query = Readonly<Record<string, string | number | undefined>>;

const NOT_ANSWERING = "Longhold is not answering.";

interface Sending {
  readonly body?: BodyInit;
  readonly type?: string;
  /** Gives up waiting for the answer. */
  readonly signal?: AbortSignal;
}

async function request<T>(method: string, path: string, { type, ...sending }: Sending = {}): Promise<T> {
  const headers: Record<string, string> = { accept: "application/json", ...(type ? { "content-type": type } : {}) };
  const response = await fetch(`/api${path}`, { method, headers, ...sending }).catch(() => null);
  // Whoever gave up learnt nothing about the server.
  sending.signal?.throwIfAborted();
  const json: unknown = (await response?.json().catch(() => null)) ?? null;
  const status = response?.status ?? 0;
  const said = response?.ok ? null : toError(json, status);
  // A proxy that stands before a stopped server answers 502, 503 or 504.
  noteAnswering(response !== null && ![502, 503, 504].includes(status));
  // Others may answer in Longhold's place; only its own words count as an answer.
  if (response === null || (response.ok ? json === null : said === null)) throw notAnswering(status);
  if (said) throw said;
  return json as T;
}

/** The error for an answer that is none: nothing came, or it was not Longhold that spoke. */
export const notAnswering = (status = 0): ApiError => new ApiError("unreachable", NOT_ANSWERING, status);

/** Longhold's own words about a failure; null if somebody else answered. */
function toError(json: unknown, status: number): ApiError | null {
  const { error, message } = (json ?? {}) as { error?: unknown; message?: unknown };
  return typeof error === "string" && typeof message === "string" ? new ApiError(error, message, status) : null;
}

const get = <T>(path: string): Promise<T> => request<T>("GET", path);
const send = <T>(method: string, path: string, body?: unknown, signal?: AbortSignal): Promise<T> =>
  request<T>(method, path, {
    ...(body === undefined ? {} : { body: JSON.stringify(body), type: "application/json" }),
    ...(signal ? { signal } : {}),
  });

function withQuery(path: string, query: Query): string {
  const search = new URLSearchParams();
  for (const [key, value] of Object.entries(query))
    if (value !== undefined && value !== "") search.set(key, String(value));
  const text = search.toString();
  return text ? `${path}?${text}` : path;
}

/** Identities made from now on must sort behind the log, even if this clock was set back. */
async function noted<T extends { readonly lastEntry: string | null }>(view: Promise<T>): Promise<T> {
  const { lastEntry } = await view;
  if (lastEntry) noteId(lastEntry);
  return view;
}

async function notedHistory(history: Promise<CardHistory>): Promise<CardHistory> {
  for (const { id } of (await history).entries) noteId(id);
  return history;
}

async function notedChange(change: Promise<ChartChange>): Promise<ChartChange> {
  const { entry } = await change;
  if (entry !== null) noteId(entry);
  return change;
}

const at = (id: string): string => encodeURIComponent(id);

/** Where a stored picture is shown from. */
export const pictureUrl = (hash: string): string => `/api/pictures/${hash}`;
/** Where a stored sound is heard from. */
export const soundUrl = (hash: string): string => `/api/sounds/${hash}`;
/** Where a subject is downloaded from. */
export const exportUrl = (subject: string): string => `/api/subjects/${at(subject)}/export`;

/** Where a box's calendar is downloaded from and subscribed to. */
export const calendarUrl = (box: string): string => `/calendar/${at(box)}.ics`;

/** Where the PDF of a kit is opened, or saved from. */
export const kitFileUrl = (job: string, download = false): string =>
  `/api/kit/jobs/${at(job)}/file${download ? "?download" : ""}`;

/** Every route of the server, typed. */
export const api = {
  today: () => noted(get<TodayView>("/today")),
  plan: () => get<PlanView>("/plan"),
  setUpBox: (body: input<typeof setUpSchema>) => send<BoxView>("POST", "/box", body),
  changeBox: (body: BoxSettings) => send<BoxView>("PATCH", "/box", body),
  changeChart: (body: input<typeof changeChartSchema>) => notedChange(send<ChartChange>("PUT", "/box/chart", body)),
  drawer: () => get<DrawerView>("/box"),
  boxCards: (query: Query) => get<Page<PlacedCard>>(withQuery("/box/cards", query)),
  card: (id: string) => notedHistory(get<CardHistory>(`/cards/${at(id)}`)),
  readCards: (ids: readonly string[]) => send<{ readonly cards: readonly Card[] }>("POST", "/cards/read", { ids }),
  beginSitting: (body: input<typeof beginSchema>) => noted(send<SittingView>("POST", "/sitting", body)),
  ahead: () => get<AheadView>("/sitting/ahead"),
  log: (entries: readonly SentEntry[]) => send<{ readonly receipts: readonly Receipt[] }>("POST", "/log", { entries }),
  subjects: () => get<{ readonly subjects: readonly SubjectView[] }>("/subjects"),
  createSubject: (name: string) => send<SubjectView>("POST", "/subjects", { name }),
  removeSubject: (id: string) => send<unknown>("DELETE", `/subjects/${at(id)}`),
  spellSubject: (id: string, rule: SpellingRule & { readonly following: boolean }) =>
    send<SpellingChange>("PUT", `/subjects/${at(id)}/spelling`, rule),
  renameSubject: (id: string, name: string) => send<SubjectView>("PATCH", `/subjects/${at(id)}`, { name }),
  facts: (query: Query) => get<Page<Fact>>(withQuery("/facts", query)),
  fact: (id: string) => get<Fact>(`/facts/${at(id)}`),
  critiqueCounts: (subject: string) =>
    get<{ readonly rules: readonly RuleCount[] }>(`/subjects/${at(subject)}/critique`),
  factNotes: (id: string) => get<FactNotes>(`/facts/${at(id)}/notes`),
  waveOffNotes: (keys: readonly string[]) => send<unknown>("POST", "/notes/wave-off", { keys }),
  bringBackNotes: (keys: readonly string[]) => send<unknown>("POST", "/notes/bring-back", { keys }),
  previewBulk: (order: BulkOrder) => send<BulkPreview>("POST", "/facts/bulk/preview", order),
  bulkEdit: (order: BulkOrder) => send<BulkResult>("POST", "/facts/bulk", order),
  edits: () => get<{ readonly edits: readonly EditView[] }>("/edits"),
  undoEdit: (id: string) => send<EditView>("POST", `/edits/${at(id)}/undo`),
  factHistory: (id: string) => get<{ readonly versions: readonly FactVersion[] }>(`/facts/${at(id)}/history`),
  duplicates: (subject: string) =>
    get<{ readonly groups: readonly (readonly Fact[])[]; readonly total: number }>(
      `/subjects/${at(subject)}/duplicates`,
    ),
  tags: (subject: string) =>
    get<{ readonly tags: readonly { readonly tag: string; readonly count: number }[] }>(
      `/subjects/${at(subject)}/tags`,
    ),
  createFact: (fact: NewFact) => send<Fact>("POST", "/facts", fact),
  createFacts: (batch: NewFacts) => send<{ readonly facts: readonly Fact[] }>("POST", "/facts/batch", batch),
  editFact: (id: string, fact: EditFact) => send<Fact>("PUT", `/facts/${at(id)}`, fact),
  deleteFact: (id: string) => send<unknown>("DELETE", `/facts/${at(id)}`),
  restoreFact: (id: string) => send<Fact>("POST", `/facts/${at(id)}/restore`),
  addPicture: (file: Blob) =>
    request<{ readonly hash: string; readonly width: number; readonly height: number }>("POST", "/pictures", {
      body: file,
      type: file.type,
    }),
  addSound: (file: Blob) => request<{ readonly hash: string }>("POST", "/sounds", { body: file, type: file.type }),
  paperDay: (date: string | null, before: PaperDays) =>
    before.length === 0
      ? get<PaperDayView>(withQuery("/paper", { date: date ?? undefined }))
      : send<PaperDayView>("POST", "/paper/day", { date: date ?? undefined, before }),
  previewPaper: (days: PaperDays) =>
    send<{ readonly outcomes: readonly PaperOutcome[] }>("POST", "/paper/preview", { days }),
  enterPaper: (days: PaperDays) => send<{ readonly outcomes: readonly PaperOutcome[] }>("POST", "/paper", { days }),
  takeBackPaper: (sittings: readonly string[]) => send<unknown>("POST", "/paper/take-back", { sittings }),
  startImport: (form: FormData) => request<ImportStatus>("POST", "/imports", { body: form }),
  previewImport: (id: string, choices: Choices, signal: AbortSignal) =>
    send<ImportPreview>("POST", `/imports/${at(id)}/preview`, choices, signal),
  acceptImport: (id: string, body: AcceptImport) => send<ImportStatus>("POST", `/imports/${at(id)}/accept`, body),
  importStatus: (id: string) => get<ImportStatus>(`/imports/${at(id)}`),
  stopImport: (id: string) => send<ImportStatus>("DELETE", `/imports/${at(id)}`),
  previewKit: (kit: KitOrder, sheet: number, signal: AbortSignal) =>
    send<KitPreview>("POST", "/kit/preview", { kit, sheet }, signal),
  openKit: (kit: KitOrder, zip: boolean) => send<KitJobView>("POST", "/kit/jobs", { kit, zip }),
  kitStatus: (id: string) => get<KitJobView>(`/kit/jobs/${at(id)}`),
  stopKit: (id: string) => send<KitJobView>("DELETE", `/kit/jobs/${at(id)}`),
  kitPrinted: (id: string) => send<KitJobView>("POST", `/kit/jobs/${at(id)}/printed`),
  paperCards: (subjects: readonly string[]) => get<PaperCardsView>(`/kit/paper?subjects=${subjects.map(at).join(",")}`),
  cardPaper: (id: string) => get<CardPaperView>(`/cards/${at(id)}/paper`),
  factPaper: (id: string) => get<FactPaperView>(`/facts/${at(id)}/paper`),
  cardsMissing: (missing: MissingCards) => send<PrintStep>("POST", "/kit/missing", missing),
  undoPrintStep: (id: string) => send<PrintStep>("POST", `/kit/steps/${at(id)}/undo`),
  fillDemo: () => noted(send<TodayView>("POST", "/demo")),
  clearDemo: () => noted(send<TodayView>("DELETE", "/demo")),
} as const;
