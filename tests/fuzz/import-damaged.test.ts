// A thousand damaged files, the same every time: nothing throws, every row is accounted for, every problem says
// where it is, and what comes out as text is text that was there.
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { cleanText } from "../../src/core/facts/clean-text.ts";
import type { FactContent } from "../../src/core/facts/fact.ts";
import { addedWords, statedWords } from "../../src/core/facts/fact-words.ts";
import { decodeText } from "../../src/exchange/decode-text.ts";
import { createListReader, type ListItem, previewList } from "../../src/exchange/read-list.ts";
import { ROW_LIMITS } from "../../src/exchange/rows-to-facts.ts";
import { normalisePicture, PICTURE_LIMITS } from "../../src/media/normalise-picture.ts";
import { findingPictures } from "../support/find-media.ts";
import { damagedList, damagedPicture } from "./damaged-files.ts";

const LISTS = 880;
const PICTURES = 120;

const findMedia = findingPictures((name: string): string | null => (name === "moon.png" ? "ef".repeat(32) : null));
const isKnown = (key: string): boolean => key.includes("Deneb");

function readDamaged(n: number) {
  const { bytes, choices } = damagedList(n);
  const reader = createListReader(bytes, choices, findMedia);
  const preview = previewList(bytes, choices, findMedia, isKnown);
  if (!reader.ok || !preview.ok) throw new Error(`list ${n} was refused`);
  return {
    text: decodeText(bytes, choices.encoding).text,
    reader: reader.value,
    items: [...reader.value.drafts()],
    preview: preview.value,
  };
}

const wordsOf = (content: FactContent): readonly string[] => [...statedWords(content), ...addedWords(content)];

/** Without quotes and white space, which reading may change, and without what tidying takes out. */
const squash = (text: string): string => cleanText(text).replace(/["\s]/gu, "");

function checkText(content: FactContent, squashedList: string): void {
  for (const text of wordsOf(content)) {
    expect(text).toBe(cleanText(text));
    expect(text).not.toMatch(/[^\P{C}\n\p{Cf}\p{Co}\p{Cn}]/u);
    expect(text.length).toBeLessThanOrEqual(ROW_LIMITS.text);
    expect(squashedList.includes(squash(text))).toBe(true);
  }
}

function checkItem(item: ListItem, lines: number, lastLine: number): void {
  expect(item.line).toBeGreaterThan(lastLine);
  if (item.kind !== "problems") return;
  expect(item.problems.length).toBeGreaterThan(0);
  for (const { line, column, reason } of item.problems) {
    expect(line).toBeGreaterThanOrEqual(item.line);
    expect(line).toBeLessThanOrEqual(lines);
    expect(column).toBeGreaterThanOrEqual(1);
    expect(reason.length).toBeGreaterThan(10);
  }
}

describe("a damaged list", () => {
  it(`is read to its end, ${LISTS} times`, () => {
    const seen = { fact: 0, duplicate: 0, problems: 0 };
    for (let n = 0; n < LISTS; n++) {
      const { text, reader, items, preview } = readDamaged(n);
      const lines = text.split(/\r\n|\r|\n/).length;
      const squashedList = squash(text);
      let lastLine = 0;
      for (const item of items) {
        checkItem(item, lines, lastLine);
        if (item.kind === "fact") checkText(item.content, squashedList);
        lastLine = item.line;
        seen[item.kind]++;
      }
      const withProblems = items.filter((item) => item.kind === "problems");
      expect(preview.rows).toBe(items.length);
      expect(preview.good + preview.duplicates + withProblems.length).toBe(items.length);
      expect(preview.problemCount).toBe(withProblems.flatMap((item) => item.problems).length);
      expect(reader.estimatedRows).toBeGreaterThanOrEqual(items.length);
    }
    // Otherwise the damage would be too small, or too large, to test anything.
    expect(seen.fact).toBeGreaterThan(4_000);
    expect(seen.duplicate).toBeGreaterThan(50);
    expect(seen.problems).toBeGreaterThan(1_500);
  }, 60_000);

  it("is read the same way every time", () => {
    for (let n = 0; n < 20; n++) expect(readDamaged(n).items).toEqual(readDamaged(n).items);
  });
});

describe("a damaged picture", () => {
  let whole: readonly Buffer[] = [];
  beforeAll(async () => {
    // sharp's own noise would be new every time; a picture enlarged from a few pixels is as good.
    const pixels = Buffer.from(Array.from({ length: 12 * 8 * 3 }, (_, i) => (i * 97) % 256));
    const base = sharp(pixels, { raw: { width: 12, height: 8, channels: 3 } }).resize(48, 32);
    whole = await Promise.all(
      (["png", "jpeg", "webp", "gif", "avif"] as const).map((form) => base.clone().toFormat(form).toBuffer()),
    );
  });

  it(`is kept within the limits or refused with a reason, ${PICTURES} times`, async () => {
    const results = await Promise.all(
      Array.from({ length: PICTURES }, (_, n) => normalisePicture(damagedPicture(n, whole))),
    );
    for (const result of results) {
      if (!result.ok) {
        expect(result.error.length).toBeGreaterThan(10);
        continue;
      }
      const { bytes, width, height } = result.value;
      expect(await sharp(bytes).metadata()).toMatchObject({ width, height });
      expect(Math.max(width, height)).toBeLessThanOrEqual(PICTURE_LIMITS.longestSide);
    }
    expect(results.filter((result) => result.ok).length).toBeGreaterThan(10);
    expect(results.filter((result) => !result.ok).length).toBeGreaterThan(60);
  }, 60_000);
});
