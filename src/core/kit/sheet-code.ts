// The corner codes of a printed sitting sheet. They carry everything that is needed to read it: which sheet it is and
// the card numbers of the page. The numbers are cut into three shares, and a fourth is the three laid over each other
// (exclusive or), so that any three of the four codes give them all.
import { dateToDayNumber, dayNumberToDate, type LocalDate } from "../calendar/local-date.ts";
import { hash32 } from "../random.ts";
import { fail, ok, type Result } from "../result.ts";
import { fromBase45, toBase45 } from "./base45.ts";
import type { Size } from "./paper.ts";

/** Which sheet it is. */
export interface SheetHead {
  /** Tells this sheet from every other: box, date, day and all its numbers in eight hexadecimal digits. */
  readonly sheet: string;
  /** What `boxMark` gives for the box. */
  readonly box: number;
  readonly date: LocalDate;
  /** Box day. */
  readonly day: number;
  /** From 1. */
  readonly page: number;
  readonly pages: number;
  readonly size: Size;
}

/** Numbers of one pile that stand together on a page, ascending. */
export type SheetPart = readonly number[];

/** One of the four codes of a page. */
export interface CornerCode {
  readonly head: SheetHead;
  /** 0 top left, 1 top right, 2 bottom left, 3 bottom right. */
  readonly corner: number;
  readonly share: Uint8Array;
  /** Bytes in the three shares together; what is beyond them fills the last share up. */
  readonly total: number;
}

/** Why a code is not one of a sheet that can be read here. */
export type CodeTrouble = "foreign" | "newer";

/** The layout that `sheetLayout` draws; another layout gets another figure. */
const PREFIX = "LH1";
const HEAD_BYTES = 20;
const CHECK_BYTES = 4;

/** Bytes of numbers that a page can carry: its codes then are of version 5 with level M (122 characters, ISO/IEC 18004). */
export const MOST_BYTES = 3 * 58 - CHECK_BYTES;

/** A box as 32 bits: enough to tell the boxes of a household or a class apart, and it gives no identity away. */
export const boxMark = (box: string): number => hash32("box on paper", box);

/** The identity of a sheet. */
export function sheetMark(from: { box: string; date: LocalDate; day: number }, piles: readonly SheetPart[]): string {
  const text = [from.box, from.date, from.day, ...piles.map((pile) => pile.join(","))].join(";");
  return hash32("sheet", text).toString(16).padStart(8, "0");
}

/** How many bytes the numbers of a page take. */
export const bytesOf = (parts: readonly SheetPart[]): number => packNumbers(parts).length;

/** What the four codes of a page hold, in the order of their corners. The numbers must take at most `MOST_BYTES`. */
export function cornerCodes(head: SheetHead, parts: readonly SheetPart[]): readonly string[] {
  const packed = packNumbers(parts);
  if (packed.length > MOST_BYTES) throw new Error(`a page of ${packed.length} bytes of numbers`);
  const data = Uint8Array.from([...packed, ...checkOf(head, packed)]);
  const long = Math.ceil(data.length / 3);
  const share = (i: number): Uint8Array => Uint8Array.from({ length: long }, (_, at) => data[i * long + at] ?? 0);
  const shares = [share(0), share(1), share(2)];
  return [...shares, overlay(shares)].map(
    (one, corner) => PREFIX + toBase45(Uint8Array.from([...packHead(head, corner, data.length), ...one])),
  );
}

/** The code that a text holds. */
export function parseCornerCode(text: string): Result<CornerCode, CodeTrouble> {
  if (!text.startsWith(PREFIX)) return fail(/^LH\d/.test(text) ? "newer" : "foreign");
  const bytes = fromBase45(text.slice(PREFIX.length));
  if (!bytes || bytes.length <= HEAD_BYTES) return fail("foreign");
  const view = new DataView(bytes.buffer);
  const head: SheetHead = {
    sheet: view.getUint32(3).toString(16).padStart(8, "0"),
    box: view.getUint32(7),
    date: dayNumberToDate(view.getUint16(11)),
    day: view.getUint16(13),
    page: view.getUint8(1),
    pages: view.getUint8(2),
    size: { width: view.getUint16(15) / 10, height: view.getUint16(17) / 10 },
  };
  const corner = view.getUint8(0);
  const total = view.getUint8(19);
  const share = bytes.slice(HEAD_BYTES);
  if (corner > 3 || share.length !== Math.ceil(total / 3) || total <= CHECK_BYTES) return fail("foreign");
  if (head.page < 1 || head.page > head.pages || !isPaper(head.size)) return fail("foreign");
  return ok({ head, corner, share, total });
}

/** Anybody can print a code: one that claims a page as large as a wall must not be laid out. */
const isPaper = ({ width, height }: Size): boolean => Math.min(width, height) >= 100 && Math.max(width, height) <= 450;

/** Whether two codes stand on one page. */
export const onOnePage = (a: SheetHead, b: SheetHead): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The numbers of a page from at least three of its codes; null if they do not belong together. */
export function joinCodes(codes: readonly CornerCode[]): readonly SheetPart[] | null {
  const [first] = codes;
  if (!first || codes.some((code) => code.total !== first.total || !onOnePage(code.head, first.head))) return null;
  const found = new Map(codes.map(({ corner, share }) => [corner, share]));
  if (found.size < 3) return null;
  const missing = [0, 1, 2].find((corner) => !found.has(corner));
  if (missing !== undefined) found.set(missing, overlay([...found.values()]));
  const data = [0, 1, 2].flatMap((corner) => [...(found.get(corner) as Uint8Array)]).slice(0, first.total);
  const packed = Uint8Array.from(data.slice(0, -CHECK_BYTES));
  const check = checkOf(first.head, packed);
  return check.every((byte, i) => byte === data[packed.length + i]) ? unpackNumbers(packed) : null;
}

const overlay = (shares: readonly Uint8Array[]): Uint8Array =>
  (shares[0] as Uint8Array).map((_, at) => shares.reduce((all, one) => all ^ (one[at] as number), 0));

function packHead({ sheet, box, date, day, page, pages, size }: SheetHead, corner: number, total: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(HEAD_BYTES));
  view.setUint8(0, corner);
  view.setUint8(1, page);
  view.setUint8(2, pages);
  view.setUint32(3, Number.parseInt(sheet, 16));
  view.setUint32(7, box);
  view.setUint16(11, dateToDayNumber(date));
  view.setUint16(13, day);
  view.setUint16(15, Math.round(size.width * 10));
  view.setUint16(17, Math.round(size.height * 10));
  view.setUint8(19, total);
  return new Uint8Array(view.buffer);
}

function checkOf({ sheet, page }: SheetHead, packed: Uint8Array): readonly number[] {
  const hash = hash32(`${sheet} ${page}`, packed.join());
  return [24, 16, 8, 0].map((shift) => (hash >>> shift) & 255);
}

/** For each part how many numbers, then the first and each step to the next, in bytes of seven bits (LEB128). */
function packNumbers(parts: readonly SheetPart[]): Uint8Array {
  const bytes: number[] = [];
  const put = (value: number): void => {
    let rest = value;
    for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push((rest % 128) + 128);
    bytes.push(rest);
  };
  for (const part of parts) {
    put(part.length);
    part.forEach((number, i) => void put(number - (part[i - 1] ?? 0)));
  }
  return Uint8Array.from(bytes);
}

/** What `packNumbers` packed; the check has shown that it was. */
function unpackNumbers(bytes: Uint8Array): readonly SheetPart[] {
  let at = 0;
  const take = (): number => {
    let value = 0;
    for (let scale = 1; at < bytes.length; scale *= 128) {
      const byte = bytes[at++] as number;
      value += (byte % 128) * scale;
      if (byte < 128) break;
    }
    return value;
  };
  const parts: SheetPart[] = [];
  while (at < bytes.length) {
    let number = 0;
    // Each number takes a byte at least: a count beyond them is none that was packed here.
    parts.push(Array.from({ length: Math.min(take(), bytes.length - at) }, () => (number += take())));
  }
  return parts;
}
