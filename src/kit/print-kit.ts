// A kit from its plan to its PDF.
import { FailureError } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import { coarsePictures, type KitPlan, kitPages } from "../core/kit/kit-pages.ts";
import type { KitProgress } from "./kit-progress.ts";
import { addPrintHints } from "./print-hints.ts";
import { type TypesetKit, typesetKit } from "./typeset.ts";

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
  const pages = kitPages(plan);
  if (!pages.ok)
    throw new FailureError("invalid-input", `${pages.error.charAt(0).toUpperCase()}${pages.error.slice(1)}.`);
  if (pages.value.length === 0) throw new FailureError("invalid-input", "There is nothing to print.");
  const { title, language } = plan.style;
  const total = pages.value.length;
  onProgress({ step: "setting", done: 0, total });
  const set = typesetKit({ title: title === "" ? UNNAMED : title, language, pages: pages.value, pictures });
  onProgress({ step: "finishing", done: total, total });
  return {
    pdf: await addPrintHints(set.pdf, plan.turn),
    notices: [...set.notices, ...coarsePictures(pages.value, (picture) => pictures.get(picture))],
    pages: total,
  };
}
