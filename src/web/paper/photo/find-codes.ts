// The codes of a sheet in a photo, found by the decoder.
import { readBarcodes } from "zxing-wasm/reader";
import type { FoundCode } from "../../../core/paper/photo/read-page.ts";

/** Room for the four codes of a page and a few of its neighbours, by which it is seen that there are two pages. */
const MOST_CODES = 12;

/** The QR codes of a picture. The decoder must have been prepared; it fetches nothing by itself then. */
export async function findCodes(picture: ImageData): Promise<readonly FoundCode[]> {
  const codes = await readBarcodes(picture, {
    formats: ["QRCode"],
    maxNumberOfSymbols: MOST_CODES,
    tryHarder: true,
    tryInvert: false,
  });
  return codes.map(({ text, position: { topLeft, topRight, bottomRight, bottomLeft } }) => ({
    text,
    // The decoder counts from the middle of a dot, the core from its edge.
    corners: [
      [topLeft.x + 0.5, topLeft.y + 0.5],
      [topRight.x + 0.5, topRight.y + 0.5],
      [bottomRight.x + 0.5, bottomRight.y + 0.5],
      [bottomLeft.x + 0.5, bottomLeft.y + 0.5],
    ],
  }));
}
