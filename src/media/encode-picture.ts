// Chooses the form in which a picture is kept: PNG for drawings and for what shines through, JPEG for
// photographs, WebP for photographs with transparent parts; smaller until it fits.
import sharp, { type Sharp } from "sharp";

/** A decoded picture: rows of 8-bit samples, `channels` to a pixel. */
export interface Pixels {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 2 | 3 | 4;
}

/** A picture in one of the forms that are kept. */
export interface EncodedPicture {
  readonly mime: "image/png" | "image/jpeg" | "image/webp";
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

/** PNG above this many bytes a pixel is a photograph (measured: drawings need under 0.4, photographs over 1). */
const PHOTOGRAPH_BYTES_PER_PIXEL = 0.75;
const SMALL_ENOUGH_FOR_PNG = 200_000;
const QUALITY = 88;
/** Each attempt that is too large is followed by one with sides this much shorter. */
const SHRINK = 0.75;

/** Encodes a picture; `sharpEdged` says that it came in a form for drawings. Never gives more than `limits.bytes`. */
export async function encodePicture(
  pixels: Pixels,
  sharpEdged: boolean,
  limits: { readonly bytes: number; readonly seconds: number },
): Promise<EncodedPicture> {
  const hasAlpha = pixels.channels === 2 || pixels.channels === 4;
  const opaque = !hasAlpha || isOpaque(pixels);
  for (let scale = 1; ; scale *= SHRINK) {
    const draw = () => prepare(pixels, scale, opaque && hasAlpha, limits.seconds);
    if (sharpEdged || !opaque) {
      const png = await encode(draw().png({ compressionLevel: 9 }), "image/png");
      const drawing =
        png.bytes.length <= Math.max(SMALL_ENOUGH_FOR_PNG, png.width * png.height * PHOTOGRAPH_BYTES_PER_PIXEL);
      if (drawing && png.bytes.length <= limits.bytes) return png;
    }
    const photograph = opaque
      ? await encode(draw().jpeg({ quality: QUALITY }), "image/jpeg")
      : await encode(draw().webp({ quality: QUALITY, alphaQuality: 100 }), "image/webp");
    if (photograph.bytes.length <= limits.bytes) return photograph;
  }
}

function prepare({ data, width, height, channels }: Pixels, scale: number, dropAlpha: boolean, seconds: number): Sharp {
  const picture = sharp(data, { raw: { width, height, channels } }).timeout({ seconds });
  if (scale < 1) picture.resize({ width: Math.max(1, Math.round(width * scale)) });
  return dropAlpha ? picture.removeAlpha() : picture;
}

async function encode(picture: Sharp, mime: EncodedPicture["mime"]): Promise<EncodedPicture> {
  const { data, info } = await picture.toBuffer({ resolveWithObject: true });
  return { mime, width: info.width, height: info.height, bytes: data };
}

function isOpaque({ data, channels }: Pixels): boolean {
  for (let i = channels - 1; i < data.length; i += channels) if (data[i] !== 255) return false;
  return true;
}
