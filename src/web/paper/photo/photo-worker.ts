// Reads photos of sheets beside the page. The photo stays in this browser: it is decoded, read and forgotten here.
import { prepareZXingModule } from "zxing-wasm/reader";
import wasmUrl from "zxing-wasm/reader/zxing_reader.wasm?url";
import { type BoxCrop, cropBox } from "../../../core/paper/photo/crop-box.ts";
import { toGrey } from "../../../core/paper/photo/grey-image.ts";
import { type PageReading, type PhotoTrouble, readPage } from "../../../core/paper/photo/read-page.ts";
import { findCodes } from "./find-codes.ts";

/** What the worker is asked. */
export interface PhotoRequest {
  readonly id: number;
  readonly photo: Blob;
}

/** What came of a photo. */
export type PhotoAnswer =
  | {
      readonly kind: "read";
      readonly page: PageReading;
      /** The doubtful boxes enlarged, by their place among the boxes of the page. */
      readonly crops: ReadonlyMap<number, BoxCrop>;
    }
  | { readonly kind: "trouble"; readonly trouble: PhotoTrouble | { readonly kind: "no-picture" } };

/** What the worker answers. */
export interface PhotoReply {
  readonly id: number;
  readonly answer: PhotoAnswer;
}

/** Dots beyond which a photo is made smaller first: some browsers have no larger canvas. */
const MOST_DOTS = 4096 * 4096;

// The decoder's own default is to fetch from elsewhere, which the content policy would refuse.
prepareZXingModule({ overrides: { locateFile: () => wasmUrl } });

addEventListener("message", ({ data: { id, photo } }: MessageEvent<PhotoRequest>) => {
  void answerPhoto(photo).then((answer) => postMessage({ id, answer } satisfies PhotoReply));
});

async function answerPhoto(photo: Blob): Promise<PhotoAnswer> {
  const picture = await decodePhoto(photo);
  if (!picture) return { kind: "trouble", trouble: { kind: "no-picture" } };
  const codes = await findCodes(picture);
  const grey = toGrey(picture.width, picture.height, picture.data);
  const read = readPage(grey, codes);
  if (!read.ok) return { kind: "trouble", trouble: read.error };
  const page = read.value;
  const crops = page.boxes.flatMap((box, i) =>
    box.judgement === "doubtful" ? [[i, cropBox(grey, page.toPhoto, box)] as const] : [],
  );
  return { kind: "read", page, crops: new Map(crops) };
}

/** The photo upright, as its EXIF orientation says; null if it is no picture. */
async function decodePhoto(photo: Blob): Promise<ImageData | null> {
  const bitmap = await createImageBitmap(photo, { imageOrientation: "from-image" }).catch(() => null);
  if (!bitmap) return null;
  const scale = Math.min(1, Math.sqrt(MOST_DOTS / (bitmap.width * bitmap.height)));
  const [width, height] = [Math.floor(bitmap.width * scale), Math.floor(bitmap.height * scale)];
  const context = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true });
  context?.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  return context?.getImageData(0, 0, width, height) ?? null;
}
