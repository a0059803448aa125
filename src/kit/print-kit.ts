// A kit from its plan to its PDF.
import { FailureError } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import { coarsePictures, type KitPlan, kitPages } from "../core/kit/kit-pages.ts";
import { drawFormulae } from "./draw-formulae.ts";
import { finishPdf } from "./finish-pdf.ts";
import type { KitProgress } from "./kit-progress.ts";
import { type PreparedPicture, preparePictures } from "./prepare-pictures.ts";
import { type SetPicture, type TypesetKit, typesetKit } from "./typeset.ts";

/** A PDF must have a title, for those who hear it. */
const UNNAMED = "Card kit";

/** A kit that was set, and how many pages it has. */
export interface PrintedKit extends TypesetKit {
  readonly pages: number;
}

/** Sets a kit. Fails with `invalid-input` if its pieces do not fit on the sheet or there is nothing to print. */
export async function printKit(
  plan: KitPlan,
  pictures: ReadonlyMap<string, PictureRecord>,
  onProgress: (progress: KitProgress) => void = () => undefined,
): Promise<PrintedKit> {
  const pages = kitPages(plan, (picture) => pictures.get(picture));
  if (!pages.ok)
    throw new FailureError("invalid-input", `${pages.error.charAt(0).toUpperCase()}${pages.error.slice(1)}.`);
  const total = pages.value.length;
  if (total === 0) throw new FailureError("invalid-input", "There is nothing to print.");
  const prepared = await preparePictures(pages.value, pictures, (done, of) =>
    onProgress({ step: "pictures", done, total: of }),
  );
  onProgress({ step: "setting", done: 0, total });
  const { title, language } = plan.style;
  const named = title === "" ? UNNAMED : title;
  const standIns = new Map([...prepared].map(([hash, one]) => [hash, standInOf(one)]));
  const formulae = await drawFormulae(pages.value);
  const set = typesetKit({ title: named, language, pages: pages.value, pictures: standIns, formulae });
  onProgress({ step: "finishing", done: total, total });
  return {
    pdf: await finishPdf(set.pdf, { turn: plan.turn, pages: pages.value, pictures: [...prepared.values()] }),
    notices: [...set.notices, ...coarsePictures(pages.value, (picture) => pictures.get(picture))],
    pages: total,
  };
}

/** Its size is that of the picture, so that it is laid out as the picture will be. */
const standInOf = ({ width, height, standIn }: PreparedPicture): SetPicture => ({
  width,
  height,
  mime: "image/png",
  bytes: standIn,
});
