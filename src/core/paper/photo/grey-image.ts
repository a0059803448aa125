// A picture as grey dots on a plain array.

/** Grey dots row by row, 0 black … 255 white. */
export interface GreyImage {
  readonly width: number;
  readonly height: number;
  readonly dots: Uint8Array | Uint8ClampedArray;
}

/** The brightness of a picture in four channels, by ITU-R BT.601, as a camera's JPEG holds it. */
export function toGrey(width: number, height: number, rgba: Uint8ClampedArray): GreyImage {
  const dots = new Uint8Array(width * height);
  for (let i = 0, at = 0; i < dots.length; i++, at += 4)
    dots[i] = (77 * (rgba[at] as number) + 150 * (rgba[at + 1] as number) + 29 * (rgba[at + 2] as number) + 128) >> 8;
  return { width, height, dots };
}

/** Brightness at a place between dots, bilinear; the centre of the first dot is (0.5, 0.5). White outside the picture. */
export function sampleAt({ width, height, dots }: GreyImage, x: number, y: number): number {
  if (!(x >= 0.5 && y >= 0.5 && x < width - 0.5 && y < height - 0.5)) return 255;
  const left = Math.floor(x - 0.5);
  const top = Math.floor(y - 0.5);
  const u = x - 0.5 - left;
  const v = y - 0.5 - top;
  const at = top * width + left;
  // On the last row or column there is nothing beyond, and its weight is nothing.
  const above = (dots[at] as number) * (1 - u) + (dots[at + 1] ?? 0) * u;
  const below = (dots[at + width] ?? 0) * (1 - u) + (dots[at + width + 1] ?? 0) * u;
  return above * (1 - v) + below * v;
}
