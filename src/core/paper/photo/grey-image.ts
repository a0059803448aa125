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

/** Whether `sampleAt` has dots all round a place. */
export const isInside = ({ width, height }: GreyImage, x: number, y: number): boolean =>
  x >= 0.5 && y >= 0.5 && x < width - 0.5 && y < height - 0.5;

/** Brightness at a place between dots, bilinear; the centre of the first dot is (0.5, 0.5). It must be inside. */
export function sampleAt({ width, dots }: GreyImage, x: number, y: number): number {
  const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
  const [u, v] = [x - 0.5 - left, y - 0.5 - top];
  const at = top * width + left;
  // On the last row or column there is nothing beyond, and its weight is nothing.
  const [a, b] = [dots[at] as number, dots[at + 1] ?? 0];
  const [c, d] = [dots[at + width] ?? 0, dots[at + width + 1] ?? 0];
  return (a * (1 - u) + b * u) * (1 - v) + (c * (1 - u) + d * u) * v;
}
