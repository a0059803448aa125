// Reads a photo in Node as the pages do in the browser: upright, its codes found, its boxes judged.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import sharp from "sharp";
import { prepareZXingModule } from "zxing-wasm/reader";
import { type GreyImage, toGrey } from "../../../src/core/paper/photo/grey-image.ts";
import {
  type FoundCode,
  type PageReading,
  type PhotoTrouble,
  readPage,
} from "../../../src/core/paper/photo/read-page.ts";
import type { Result } from "../../../src/core/result.ts";
import { findCodes } from "../../../src/web/paper/photo/find-codes.ts";

/** Gets the decoder ready. */
export function prepareDecoder(): void {
  const file = createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm");
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(readFileSync(file)).buffer } });
}

/** What a photo says. The decoder must be ready. */
export async function readJpeg(jpeg: Uint8Array): Promise<Result<PageReading, PhotoTrouble>> {
  const { grey, codes } = await decodeJpeg(jpeg);
  return readPage(grey, codes);
}

/** A photo upright and grey, and the codes in it. */
export async function decodeJpeg(jpeg: Uint8Array): Promise<{ grey: GreyImage; codes: readonly FoundCode[] }> {
  const { data, info } = await sharp(jpeg)
    .rotate()
    .toColourspace("srgb")
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const rgba = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length);
  const { width, height } = info;
  const codes = await findCodes({ data: rgba, width, height, colorSpace: "srgb" } as ImageData);
  return { grey: toGrey(width, height, rgba), codes };
}
