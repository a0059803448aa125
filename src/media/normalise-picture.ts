// Makes of any picture one that is safe to keep and to show: upright, of bounded size, sRGB, without metadata
// (which can hold the place where it was taken), in a form that every browser shows.
import { createHash } from "node:crypto";
import sharp from "sharp";
import { fail, ok, type Result } from "../core/result.ts";
import { drawSvg } from "./draw-svg.ts";
import { encodePicture, type Pixels } from "./encode-picture.ts";
import { type PictureKind, pictureKind } from "./picture-kind.ts";
import { checkSvg } from "./svg-safety.ts";
import { createTurns } from "./take-turns.ts";

/** A picture as it is kept; `hash` is the SHA-256 of `bytes`, lower-case hexadecimal. */
export interface StoredPicture {
  readonly hash: string;
  readonly mime: "image/png" | "image/jpeg" | "image/webp";
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

const MB = 1024 * 1024;

/** What a picture may ask of this computer, and what is kept of it. */
export const PICTURE_LIMITS = {
  inputBytes: 25 * MB,
  svgBytes: 2 * MB,
  pixels: 50_000_000,
  longestSide: 2400,
  /** Drawings smaller than this are drawn larger: they have no size of their own. */
  smallestDrawing: 1200,
  storedBytes: 4 * MB,
  seconds: 20,
  svgSeconds: 10,
  /** Pictures worked on at the same time. */
  atOnce: 2,
} as const;

const takeTurns = createTurns(PICTURE_LIMITS.atOnce);

/** Reads, checks and re-encodes a picture. Fails with the reason in plain words; the same bytes give the same result. */
export async function normalisePicture(bytes: Uint8Array): Promise<Result<StoredPicture, string>> {
  const kind = pictureKind(bytes);
  const refusal = refuseBytes(bytes, kind);
  if (refusal !== null) return fail(refusal);
  return takeTurns(async () => {
    const bitmap = kind === "svg" ? await svgToBitmap(bytes) : ok(bytes);
    if (!bitmap.ok) return bitmap;
    const pixels = await decode(bitmap.value, kind === "svg" ? "png" : (kind as PictureKind));
    if (!pixels.ok) return pixels;
    const sharpEdged = kind === "png" || kind === "gif" || kind === "svg";
    const limits = { bytes: PICTURE_LIMITS.storedBytes, seconds: PICTURE_LIMITS.seconds };
    const encoded = await attempt(() => encodePicture(pixels.value, sharpEdged, limits));
    if (!encoded.ok) return encoded;
    const hash = createHash("sha256").update(encoded.value.bytes).digest("hex");
    return ok({ hash, ...encoded.value });
  });
}

const inMegabytes = (bytes: number): string => `${(bytes / MB).toFixed(1)} MB`;

function refuseBytes(bytes: Uint8Array, kind: PictureKind | null): string | null {
  if (bytes.length === 0) return "the file is empty: choose another";
  const most = kind === "svg" ? PICTURE_LIMITS.svgBytes : PICTURE_LIMITS.inputBytes;
  if (bytes.length > most) {
    const what = kind === "svg" ? "the drawing" : "the picture";
    return `${what} has ${inMegabytes(bytes.length)}, and at most ${inMegabytes(most)} can be taken: save it smaller`;
  }
  if (kind !== null) return null;
  return "this is not a picture that can be read: save it as PNG, JPEG, WebP, GIF, AVIF or SVG, and choose that file";
}

/** Seen before anything is decoded: a file of a few bytes can claim to be as large as a field. */
async function refuseSize(bytes: Uint8Array, kind: PictureKind): Promise<string | null> {
  const header = await attempt(() => sharp(bytes, { limitInputPixels: false }).metadata());
  if (!header.ok) return header.error;
  const { width, height, format } = header.value;
  if (format !== (kind === "avif" ? "heif" : kind)) return DAMAGED;
  if (width * height <= PICTURE_LIMITS.pixels) return null;
  const most = PICTURE_LIMITS.pixels / 1_000_000;
  return `the picture is ${width} × ${height} pixels, and at most ${most} million can be taken: save it smaller`;
}

async function svgToBitmap(bytes: Uint8Array): Promise<Result<Uint8Array, string>> {
  const safe = checkSvg(bytes);
  if (!safe.ok) return safe;
  for (const bitmap of safe.value.bitmaps) {
    const kind = pictureKind(bitmap);
    const refusal = kind === null || kind === "svg" ? DAMAGED : await refuseSize(bitmap, kind);
    if (refusal !== null) return fail(`inside the drawing: ${refusal}`);
  }
  return drawSvg(safe.value.svg, {
    smallestSide: PICTURE_LIMITS.smallestDrawing,
    largestSide: PICTURE_LIMITS.longestSide,
    pixels: PICTURE_LIMITS.pixels,
    seconds: PICTURE_LIMITS.svgSeconds,
  });
}

async function decode(bytes: Uint8Array, kind: PictureKind): Promise<Result<Pixels, string>> {
  const refusal = await refuseSize(bytes, kind);
  if (refusal !== null) return fail(refusal);
  return attempt(async () => {
    const side = PICTURE_LIMITS.longestSide;
    const { data, info } = await sharp(bytes, { limitInputPixels: PICTURE_LIMITS.pixels, failOn: "error" })
      .autoOrient()
      .resize({ width: side, height: side, fit: "inside", withoutEnlargement: true })
      .toColourspace("srgb")
      .timeout({ seconds: PICTURE_LIMITS.seconds })
      .raw({ depth: "uchar" })
      .toBuffer({ resolveWithObject: true });
    return { data, width: info.width, height: info.height, channels: info.channels };
  });
}

const DAMAGED =
  "the picture is damaged or cut off: open it in a program for pictures, save it again, and choose that file";

/** sharp reports everything by throwing; what it throws about a file is no news for the person but these two. */
async function attempt<T>(work: () => Promise<T>): Promise<Result<T, string>> {
  try {
    return ok(await work());
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    return fail(/timeout/.test(error.message) ? "the picture takes too long to read: save it smaller" : DAMAGED);
  }
}
