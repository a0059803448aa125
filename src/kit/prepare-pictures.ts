// Pictures as they go into a PDF: no finer than a printer can print, and in a form that a PDF takes as it is. The
// engine gets a stand-in of one dot for each, because it would unpack every picture into memory.
import sharp, { type Sharp } from "sharp";
import type { PictureRecord } from "../app/ports.ts";
import type { KitPage } from "../core/kit/page.ts";
import { dotsAnInch } from "../core/kit/place-picture.ts";
import { batches } from "../core/lists.ts";

/** Dots an inch that are printed, and above which a picture is made smaller. Common practice: 300 shows all there is. */
export const PRINT_DPI = { kept: 300, most: 450 } as const;

/** Quality of pictures that have to be packed anew. */
const QUALITY = 90;

/** A picture ready for a PDF. */
export interface PreparedPicture {
  /** JPEG as it is, or rows of RGB packed as PNG packs them. */
  readonly form: "jpeg" | "png rows";
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** A PNG of one dot in a colour of its own, by which the picture is found again. */
  readonly standIn: Uint8Array;
}

/** Every picture that the pages show, by its hash; throws if one is not there. */
export async function preparePictures(
  pages: readonly KitPage[],
  pictures: ReadonlyMap<string, PictureRecord>,
  onProgress: (done: number, total: number) => void,
): Promise<ReadonlyMap<string, PreparedPicture>> {
  const shown = [...coarsestByPicture(pages, pictures)];
  const prepared = new Map<string, PreparedPicture>();
  for (const some of batches(shown, AT_ONCE)) {
    onProgress(prepared.size, shown.length);
    const ready = await Promise.all(some.map(([picture, dpi]) => prepare(picture, dpi)));
    for (const [i, one] of ready.entries())
      prepared.set((some[i] as (typeof some)[0])[0].hash, { ...one, standIn: await standIn(prepared.size) });
  }
  return prepared;
}

/** Pictures worked on at the same time. */
const AT_ONCE = 4;

/** Every picture that is shown, and the fewest dots an inch at which it is. */
function coarsestByPicture(
  pages: readonly KitPage[],
  pictures: ReadonlyMap<string, PictureRecord>,
): ReadonlyMap<PictureRecord, number> {
  const coarsest = new Map<PictureRecord, number>();
  for (const item of pages.flatMap((page) => page.items)) {
    if (item.kind !== "picture") continue;
    const picture = pictures.get(item.picture);
    if (!picture) throw new Error(`no bytes for the picture ${item.picture}`);
    coarsest.set(picture, Math.min(dotsAnInch(item, picture), coarsest.get(picture) ?? Infinity));
  }
  return coarsest;
}

type Ready = Omit<PreparedPicture, "standIn">;

async function prepare(picture: PictureRecord, dpi: number): Promise<Ready> {
  const scale = dpi > PRINT_DPI.most ? PRINT_DPI.kept / dpi : 1;
  if (scale === 1 && picture.mime === "image/jpeg" && (await isPlainJpeg(picture.bytes)))
    return { form: "jpeg", bytes: picture.bytes, width: picture.width, height: picture.height };
  const drawn = sharp(picture.bytes).toColourspace("srgb");
  if (scale < 1) drawn.resize({ width: Math.max(1, Math.round(picture.width * scale)) });
  // What shines through a picture on paper is the paper.
  const onPaper = drawn.flatten({ background: "#ffffff" });
  return picture.mime === "image/png" ? packRows(onPaper) : packJpeg(onPaper);
}

/** Three colours of eight bits: grey ones and those of printing houses are packed anew. */
async function isPlainJpeg(bytes: Uint8Array): Promise<boolean> {
  const { channels, space, depth } = await sharp(bytes).metadata();
  return channels === 3 && space === "srgb" && depth === "uchar";
}

async function packJpeg(picture: Sharp): Promise<Ready> {
  const { data, info } = await picture.jpeg({ quality: QUALITY }).toBuffer({ resolveWithObject: true });
  return { form: "jpeg", bytes: data, width: info.width, height: info.height };
}

/** Drawings stay as sharp as they are. The packed rows of a PNG are what a PDF takes too. */
async function packRows(picture: Sharp): Promise<Ready> {
  const rgb = picture.removeAlpha().png({ compressionLevel: 9, palette: false });
  const { data, info } = await rgb.toBuffer({ resolveWithObject: true });
  if (info.channels === 3) return { form: "png rows", bytes: rowsOf(data), width: info.width, height: info.height };
  return packJpeg(sharp(data));
}

/** The data of a PNG: its IDAT chunks one after another (PNG specification, section 5.3). */
function rowsOf(png: Buffer): Uint8Array {
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    if (png.toString("latin1", at + 4, at + 8) === "IDAT") parts.push(png.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  return new Uint8Array(Buffer.concat(parts));
}

const standIn = async (index: number): Promise<Uint8Array> =>
  new Uint8Array(
    await sharp(Buffer.from(standInColour(index)), { raw: { width: 1, height: 1, channels: 3 } })
      .png()
      .toBuffer(),
  );

/** The colour of the stand-in of a picture, counted from 0 in the order of the prepared pictures. */
const standInColour = (index: number): readonly [number, number, number] => [
  index >> 16,
  (index >> 8) & 255,
  index & 255,
];
