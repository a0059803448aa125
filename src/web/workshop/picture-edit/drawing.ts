// A drawing as what was done to it, step by step, so that every step can be undone. Places are in pixels of the picture
// as it stood when the step was made.

/** A place on the picture and how hard the pen was pressed, 0…1. */
export type PenPoint = readonly [x: number, y: number, pressure: number];

/** One step. */
export type Step =
  | {
      readonly kind: "stroke";
      readonly points: readonly PenPoint[];
      readonly width: number;
      /** A colour of the page's own, or null for the eraser. */
      readonly ink: string | null;
    }
  | { readonly kind: "turn"; readonly clockwise: boolean }
  | { readonly kind: "crop"; readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Steps that were made, and steps that were undone, the latest first. */
export interface Drawing {
  readonly steps: readonly Step[];
  readonly undone: readonly Step[];
}

/** Nothing was done yet. */
export const NEW_DRAWING: Drawing = { steps: [], undone: [] };

/** One step more; what was undone before can no longer be done again. */
export const withStep = ({ steps }: Drawing, step: Step): Drawing => ({ steps: [...steps, step], undone: [] });

/** Without the last step. */
export function undone({ steps, undone: before }: Drawing): Drawing {
  const last = steps.at(-1);
  return last ? { steps: steps.slice(0, -1), undone: [last, ...before] } : { steps, undone: before };
}

/** With the step that was undone last. */
export function redone({ steps, undone: [first, ...rest] }: Drawing): Drawing {
  return first ? { steps: [...steps, first], undone: rest } : { steps, undone: [] };
}

/** Width and height in pixels. */
export type Pixels = readonly [width: number, height: number];

/** How large the picture is after its steps. */
export const sizeAfter = (size: Pixels, steps: readonly Step[]): Pixels =>
  steps.reduce<Pixels>(([width, height], step) => {
    if (step.kind === "turn") return [height, width];
    return step.kind === "crop" ? [step.width, step.height] : [width, height];
  }, size);

/** The least that may be left of a picture. */
export const LEAST_PIXELS = 16;

/** A crop from shares of the picture, in whole pixels inside it; null if nothing would be left, or nothing be cut off. */
export function cropStep(
  [width, height]: Pixels,
  part: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Step | null {
  const left = Math.round(Math.min(1, Math.max(0, part.x)) * width);
  const top = Math.round(Math.min(1, Math.max(0, part.y)) * height);
  const right = Math.round(Math.min(1, Math.max(0, part.x + part.width)) * width);
  const bottom = Math.round(Math.min(1, Math.max(0, part.y + part.height)) * height);
  if (right - left < LEAST_PIXELS || bottom - top < LEAST_PIXELS) return null;
  if (left === 0 && top === 0 && right === width && bottom === height) return null;
  return { kind: "crop", x: left, y: top, width: right - left, height: bottom - top };
}
