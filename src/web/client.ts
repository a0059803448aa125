// All requests to the server: one function for each route. Trouble is thrown as an ApiError in plain words.
import type { input } from "zod";
import type {
  AheadView,
  BoxView,
  CardHistory,
  DrawerView,
  ImportPreview,
  ImportStatus,
  Page,
  PlacedCard,
  Receipt,
  SittingView,
  SubjectView,
  TodayView,
} from "../app/views.ts";
import type { Card } from "../core/cards/cards.ts";
import type { Fact } from "../core/facts/fact.ts";
import type {
  acceptImportSchema,
  beginSchema,
  editFactSchema,
  importChoicesSchema,
  logEntrySchema,
  newFactSchema,
  settingsSchema,
  setUpSchema,
} from "../server/schemas.ts";
import { noteAnswering } from "./data/connection.ts";

/** A fact as it is first written. */
export type NewFact = input<typeof newFactSchema>;
/** A fact as it is reworded. */
export type EditFact = input<typeof editFactSchema>;
/** The wording that the server takes; it numbers gaps itself. */
export type FactInput = NewFact["content"];
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

async function request<T>(method: string, path: string, body?: BodyInit, type?: string): Promise<T> {
  const headers: Record<string, string> = { accept: "application/json", ...(type ? { "content-type": type } : {}) };
  const response = await fetch(`/api${path}`, { method, headers, ...(body === undefined ? {} : { body }) }).catch(
    () => null,
  );
  // A proxy that stands before a stopped server answers 502, 503 or 504.
  const reached = response !== null && ![502, 503, 504].includes(response.status);
  noteAnswering(reached);
  if (!reached) throw new ApiError("unreachable", NOT_ANSWERING, response?.status ?? 0);
  const json: unknown = await response.json().catch(() => null);
  if (!response.ok) throw toError(json, response.status);
  return json as T;
}

function toError(json: unknown, status: number): ApiError {
  const said = (json ?? {}) as { error?: unknown; message?: unknown };
  const kind = typeof said.error === "string" ? said.error : "failed";
  const message = typeof said.message === "string" ? said.message : `The request failed (status ${status}).`;
  return new ApiError(kind, message, status);
}

const get = <T>(path: string): Promise<T> => request<T>("GET", path);
const send = <T>(method: string, path: string, body?: unknown): Promise<T> =>
  body === undefined ? request<T>(method, path) : request<T>(method, path, JSON.stringify(body), "application/json");

function withQuery(path: string, query: Query): string {
  const search = new URLSearchParams();
  for (const [key, value] of Object.entries(query))
    if (value !== undefined && value !== "") search.set(key, String(value));
  const text = search.toString();
  return text ? `${path}?${text}` : path;
}

const at = (id: string): string => encodeURIComponent(id);

/** Where a stored picture is shown from. */
export const pictureUrl = (hash: string): string => `/api/pictures/${hash}`;
/** Where a subject is downloaded from. */
export const exportUrl = (subject: string): string => `/api/subjects/${at(subject)}/export`;

/** Every route of the server, typed. */
export const api = {
  today: () => get<TodayView>("/today"),
  setUpBox: (body: input<typeof setUpSchema>) => send<BoxView>("POST", "/box", body),
  changeBox: (body: BoxSettings) => send<BoxView>("PATCH", "/box", body),
  drawer: () => get<DrawerView>("/box"),
  boxCards: (query: Query) => get<Page<PlacedCard>>(withQuery("/box/cards", query)),
  card: (id: string) => get<CardHistory>(`/cards/${at(id)}`),
  readCards: (ids: readonly string[]) => send<{ readonly cards: readonly Card[] }>("POST", "/cards/read", { ids }),
  beginSitting: (body: input<typeof beginSchema>) => send<SittingView>("POST", "/sitting", body),
  ahead: () => get<AheadView>("/sitting/ahead"),
  log: (entries: readonly SentEntry[]) => send<{ readonly receipts: readonly Receipt[] }>("POST", "/log", { entries }),
  subjects: () => get<{ readonly subjects: readonly SubjectView[] }>("/subjects"),
  createSubject: (name: string) => send<SubjectView>("POST", "/subjects", { name }),
  renameSubject: (id: string, name: string) => send<SubjectView>("PATCH", `/subjects/${at(id)}`, { name }),
  facts: (query: Query) => get<Page<Fact>>(withQuery("/facts", query)),
  fact: (id: string) => get<Fact>(`/facts/${at(id)}`),
  createFact: (fact: NewFact) => send<Fact>("POST", "/facts", fact),
  editFact: (id: string, fact: EditFact) => send<Fact>("PUT", `/facts/${at(id)}`, fact),
  deleteFact: (id: string) => send<unknown>("DELETE", `/facts/${at(id)}`),
  restoreFact: (id: string) => send<Fact>("POST", `/facts/${at(id)}/restore`),
  addPicture: (file: Blob) =>
    request<{ readonly hash: string; readonly width: number; readonly height: number }>(
      "POST",
      "/pictures",
      file,
      file.type,
    ),
  startImport: (form: FormData) => request<ImportStatus>("POST", "/imports", form),
  previewImport: (id: string, choices: Choices) => send<ImportPreview>("POST", `/imports/${at(id)}/preview`, choices),
  acceptImport: (id: string, body: AcceptImport) => send<ImportStatus>("POST", `/imports/${at(id)}/accept`, body),
  importStatus: (id: string) => get<ImportStatus>(`/imports/${at(id)}`),
  stopImport: (id: string) => send<ImportStatus>("DELETE", `/imports/${at(id)}`),
  fillDemo: () => send<TodayView>("POST", "/demo"),
  clearDemo: () => send<TodayView>("DELETE", "/demo"),
} as const;
