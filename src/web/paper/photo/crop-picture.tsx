// An enlarged box, cut out of the photo.
import { useLayoutEffect, useRef } from "react";
import type { BoxCrop } from "../../../core/paper/photo/crop-box.ts";

/** Draws the crop; `label` says which box it is to those who do not see it. */
export function CropPicture({ crop, label }: { readonly crop: BoxCrop; readonly label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (!context) return;
    const picture = context.createImageData(crop.width, crop.height);
    crop.dots.forEach((dot, i) => {
      picture.data.set([dot, dot, dot, 255], 4 * i);
    });
    context.putImageData(picture, 0, 0);
  }, [crop]);
  return <canvas ref={canvas} className="crop" width={crop.width} height={crop.height} role="img" aria-label={label} />;
}
