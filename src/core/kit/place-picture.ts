// Where a picture lies in its box.
import type { PictureItem } from "./page.ts";
import type { Size } from "./paper.ts";

/** A rectangle in millimetres from the top left corner of a box; a picture that fills the box begins outside of it. */
export interface Placed extends Size {
  readonly x: number;
  readonly y: number;
}

/** A picture of so many dots in the middle of its box: whole, or filling the box and cut off by it. */
export function placePicture(box: Size & Pick<PictureItem, "fit">, dots: Size): Placed {
  const scales = [box.width / dots.width, box.height / dots.height];
  const scale = box.fit === "whole" ? Math.min(...scales) : Math.max(...scales);
  const [width, height] = [dots.width * scale, dots.height * scale];
  return { x: (box.width - width) / 2, y: (box.height - height) / 2, width, height };
}

/** Dots an inch at which it is printed there. */
export const dotsAnInch = (box: Size & Pick<PictureItem, "fit">, dots: Size): number =>
  (dots.width / placePicture(box, dots).width) * 25.4;
