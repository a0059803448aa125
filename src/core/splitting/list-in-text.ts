// Whether a text that was pasted is a list, and its items.
import type { Stretch } from "./sentences.ts";

/** A list as it stands in the text. */
export interface ListFound {
  /** The line above it, or the words before its colon; null if there are none. */
  readonly title: Stretch | null;
  readonly items: readonly Stretch[];
}

/** A bullet, a number or a letter before an item. */
const MARK = /^\s*(?:[-–—*•·‣▪]|\(?\p{Nd}{1,3}[.)、]|[a-z]\))\s*/iu;
const LEAST = 3;
const LONGEST_ITEM = 80;

/** The list that the whole text is: a line each, with or without marks, or "title: a, b and c". Null if it is none. */
export function listInText(text: string): ListFound | null {
  return lineList(text) ?? colonList(text);
}

function lineList(text: string): ListFound | null {
  const lines: Stretch[] = [];
  for (const { index, 0: line } of text.matchAll(/[^\n]+/gu))
    if (line.trim() !== "") lines.push({ from: index, to: index + line.length });
  const marked = lines.map((line) => MARK.test(text.slice(line.from, line.to)));
  const [first] = lines;
  if (!first) return null;
  // A first line without a mark above marked ones, or one that ends in a colon, is what the list is about.
  const headed =
    lines.length > LEAST &&
    ((!marked[0] && marked.slice(1).every(Boolean)) || /[:：]\s*$/u.test(text.slice(first.from, first.to)));
  const body = headed ? lines.slice(1) : lines;
  const all = headed ? marked.slice(1) : marked;
  const items = body.map((line) => itemOf(text, line));
  const short = items.every(
    ({ from, to }) => to > from && to - from <= LONGEST_ITEM && !/[.!?。！？]\s+\S/u.test(text.slice(from, to)),
  );
  const ended = items.filter(({ to }) => /[.!?。！？]/u.test(text[to - 1] ?? "")).length;
  if (items.length < LEAST || !short || (!all.every(Boolean) && ended > 0)) return null;
  return { title: headed ? withoutColon(text, first) : null, items };
}

function colonList(text: string): ListFound | null {
  const found = /^([^\n:：]{2,120})[:：]([^\n]+)$/u.exec(text.trim());
  const [, head = "", tail = ""] = found ?? [];
  if (head === "" || /[.!?。！？]\s+\S/u.test(tail)) return null;
  const start = text.length - text.trimStart().length;
  const from = start + head.length + 1;
  const items: Stretch[] = [];
  // A comma divides, unless it stands in a number; "and" divides before the last item.
  for (const { index, 0: part } of tail.matchAll(
    /(?:[^,;、،；\s]|(?<=\p{Nd}),(?=\p{Nd})|\s+(?!(?:and|or|und|oder|et|ou|y|e|o)\s+[^,;、،]*$))+/giu,
  )) {
    const lead = /^\s*(?:(?:and|or|und|oder|et|ou|y|e|o)\s+)?/iu.exec(part)?.[0].length ?? 0;
    const item = { from: from + index + lead, to: from + index + part.trimEnd().replace(/[.。]$/u, "").length };
    if (item.to > item.from) items.push(item);
  }
  const short = items.every(({ from: a, to }) => text.slice(a, to).split(/\s+/u).length <= 6);
  return items.length >= LEAST && short ? { title: { from: start, to: start + head.trimEnd().length }, items } : null;
}

function itemOf(text: string, { from, to }: Stretch): Stretch {
  const line = text.slice(from, to);
  const mark = MARK.exec(line)?.[0].length ?? line.length - line.trimStart().length;
  const end = line.trimEnd().replace(/[;,]$/u, "").length;
  return { from: from + mark, to: from + Math.max(mark, end) };
}

function withoutColon(text: string, { from, to }: Stretch): Stretch {
  const line = text.slice(from, to);
  const start = line.length - line.trimStart().length;
  return { from: from + start, to: from + line.trimEnd().replace(/\s*[:：]$/u, "").length };
}
