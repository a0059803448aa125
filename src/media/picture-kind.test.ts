import { expect, it } from "vitest";
import { type PictureKind, pictureKind } from "./picture-kind.ts";

const latin1 = (text: string): Uint8Array => Buffer.from(text, "latin1");

const files: readonly (readonly [string, Uint8Array, PictureKind | null])[] = [
  ["PNG", latin1("\u0089PNG\r\n\u001a\n...."), "png"],
  ["JPEG", latin1("\u00ff\u00d8\u00ff\u00e0"), "jpeg"],
  ["WebP", latin1("RIFF\u0010\u0000\u0000\u0000WEBPVP8 "), "webp"],
  ["GIF", latin1("GIF89a"), "gif"],
  ["AVIF", latin1("\u0000\u0000\u0000\u001cftypavif"), "avif"],
  ["a drawing", latin1('<svg xmlns="http://www.w3.org/2000/svg"/>'), "svg"],
  ["a drawing after declarations", latin1('\u00ef\u00bb\u00bf<?xml version="1.0"?>\n<!-- stars --><s:svg>'), "svg"],
  ["a drawing in UTF-16", Buffer.from("\ufeff<svg >", "utf16le"), "svg"],
  ["a sound in the same wrapping as WebP", latin1("RIFF\u0010\u0000\u0000\u0000WAVEfmt "), null],
  ["a film in the same wrapping as AVIF", latin1("\u0000\u0000\u0000\u001cftypisom"), null],
  ["text that mentions svg", latin1("How to write <svg>"), null],
  ["text that says it is PNG", latin1("PNG"), null],
  ["nothing", latin1(""), null],
];

it.each(files)("recognises %s", (_, bytes, kind) => {
  expect(pictureKind(bytes)).toBe(kind);
});
