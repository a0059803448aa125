// A sheet on its way to being read: its pages come photo by photo, and each doubtful box waits for an answer.
import type { LocalDate } from "../../calendar/local-date.ts";
import { boxMark, type SheetHead } from "../../kit/sheet-code.ts";
import { fail, ok, type Result } from "../../result.ts";
import type { SheetReading } from "../sheet-reading.ts";
import type { PageReading, ReadBox } from "./read-page.ts";

/** What was read so far. */
export interface SheetDraft {
  readonly pages: ReadonlyMap<number, PageReading>;
  /** Whether a doubtful box is marked, by the key of the doubt. */
  readonly answers: ReadonlyMap<string, boolean>;
}

/** Nothing read yet. */
export const EMPTY_DRAFT: SheetDraft = { pages: new Map(), answers: new Map() };

/** The box and the day whose results are wanted; null takes a sheet of any day. */
export interface WantedSheet {
  readonly box: string;
  readonly date: LocalDate | null;
}

/** Why a page that can be read is not taken. */
export type WrongSheet =
  | { readonly kind: "other-box" }
  | { readonly kind: "other-day"; readonly date: LocalDate; readonly wanted: LocalDate }
  /** A sheet of the same day, but not the one whose other pages were read. */
  | { readonly kind: "other-sheet"; readonly page: number };

/** A doubtful box and where it stands. */
export interface Doubt {
  readonly key: string;
  readonly page: number;
  /** Which box of the page. */
  readonly at: number;
  readonly box: ReadBox;
}

const doubtKey = (page: number, at: number | ""): string => `${page}/${at}`;

/** Adds a page, or puts a better photo of it in the place of the first. */
export function addPage(draft: SheetDraft, page: PageReading, wanted: WantedSheet): Result<SheetDraft, WrongSheet> {
  const { head } = page;
  if (head.box !== boxMark(wanted.box)) return fail({ kind: "other-box" });
  if (wanted.date !== null && head.date !== wanted.date)
    return fail({ kind: "other-day", date: head.date, wanted: wanted.date });
  const known = headOf(draft);
  if (known && known.sheet !== head.sheet) return fail({ kind: "other-sheet", page: head.page });
  const answers = new Map([...draft.answers].filter(([key]) => !key.startsWith(doubtKey(head.page, ""))));
  return ok({ pages: new Map(draft.pages).set(head.page, page), answers });
}

/** Which sheet it is; null before the first page. */
export const headOf = ({ pages }: SheetDraft): SheetHead | null => [...pages.values()][0]?.head ?? null;

/** Every doubtful box, in the order of the pages. */
export function doubtsOf({ pages }: SheetDraft): readonly Doubt[] {
  return [...pages]
    .sort(([a], [b]) => a - b)
    .flatMap(([page, { boxes }]) =>
      boxes.flatMap((box, at) => (box.judgement === "doubtful" ? [{ key: doubtKey(page, at), page, at, box }] : [])),
    );
}

/** Answers a doubt, or takes the answer back with null. */
export function answerDoubt(draft: SheetDraft, key: string, marked: boolean | null): SheetDraft {
  const answers = new Map(draft.answers);
  if (marked === null) answers.delete(key);
  else answers.set(key, marked);
  return { ...draft, answers };
}

/** Pages of the sheet that no photo shows yet. */
export function missingPages(draft: SheetDraft): readonly number[] {
  const pages = headOf(draft)?.pages ?? 0;
  return Array.from({ length: pages }, (_, i) => i + 1).filter((page) => !draft.pages.has(page));
}

/** The results, once every page was read and every doubt answered; null before. */
export function readingOf(draft: SheetDraft): SheetReading | null {
  const head = headOf(draft);
  if (!head || missingPages(draft).length > 0 || doubtsOf(draft).some(({ key }) => !draft.answers.has(key)))
    return null;
  const [missed, asked]: [number[], number[]] = [[], []];
  for (const [page, { boxes }] of draft.pages) {
    const marked = boxes.map(
      ({ judgement }, at) => judgement === "ticked" || draft.answers.get(doubtKey(page, at)) === true,
    );
    const leftOut = new Set(boxes.flatMap(({ number, part }, at) => (number === null && marked[at] ? [part] : [])));
    boxes.forEach(({ number, part }, at) => {
      if (number === null || leftOut.has(part)) return;
      asked.push(number);
      if (marked[at]) missed.push(number);
    });
  }
  const ascending = (numbers: readonly number[]): readonly number[] => numbers.toSorted((a, b) => a - b);
  const { sheet, date, day } = head;
  return { sheet, date, day, missed: ascending(missed), asked: ascending(asked) };
}
