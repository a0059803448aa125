// A box of a photographed sheet by itself, upright and enlarged, for somebody to look at.
import { SHEET, type TickBox } from "../../kit/sheet-layout.ts";
import { type GreyImage, sampleAt } from "./grey-image.ts";
import { type Homography, mapPoint } from "./homography.ts";

/** Millimetres shown round a box: its neighbours above and below begin, and its number stands beside it. */
const AROUND = { left: 5, right: 24, above: 5, below: 5 } as const;

/** Dots to a millimetre of the crop. */
const DOTS = 10;

/** The box with what stands round it, and where in the crop the box lies, in dots. */
export interface BoxCrop extends GreyImage {
  readonly box: { readonly left: number; readonly top: number; readonly side: number };
}

/** Cuts a box out of a photo. */
export function cropBox(photo: GreyImage, toPhoto: Homography, { x, y }: Pick<TickBox, "x" | "y">): BoxCrop {
  const width = (AROUND.left + SHEET.box + AROUND.right) * DOTS;
  const height = (AROUND.above + SHEET.box + AROUND.below) * DOTS;
  const dots = new Uint8Array(width * height);
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const place = [x - AROUND.left + (i + 0.5) / DOTS, y - AROUND.above + (j + 0.5) / DOTS] as const;
      dots[j * width + i] = sampleAt(photo, ...mapPoint(toPhoto, place));
    }
  return {
    width,
    height,
    dots,
    box: { left: AROUND.left * DOTS, top: AROUND.above * DOTS, side: SHEET.box * DOTS },
  };
}
