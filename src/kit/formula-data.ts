// Drawn formulae as the template takes them: a file for each drawing, and in its run the room and the hidden source.
import { createHash } from "node:crypto";
import { formulaKey, overhangOf, tieFormulae } from "../core/kit/formulae.ts";
import type { TextRun } from "../core/kit/page.ts";
import type { WidthOf } from "../core/kit/size-trial.ts";
import type { DrawnFormulae } from "./draw-formulae.ts";

/** The drawings by the names of their files. */
export const formulaFiles = (formulae: DrawnFormulae | undefined): readonly (readonly [string, string])[] =>
  [...(formulae?.byKey ?? [])].map(([key, { svg }]) => [fileOf(key), svg]);

const fileOf = (key: string): string => `formula-${createHash("sha256").update(key).digest("hex")}.svg`;

/** A run with a drawing in place of its words. */
interface DrawnRun extends TextRun {
  readonly file?: string;
}

/** The runs with the room of every formula that was drawn. */
export const drawnRuns = (runs: readonly TextRun[], formulae: DrawnFormulae | undefined): readonly DrawnRun[] =>
  runs.map((run) => {
    const key = formulaKey(run);
    const drawn = run.look === "formula" ? formulae?.byKey.get(key) : undefined;
    return drawn ? { ...run, box: drawn.box, file: `/${fileOf(key)}` } : run;
  });

/** The runs as data. The source of a formula is made as small as its drawing is wide. */
export const runsData = (runs: readonly DrawnRun[], widthOf: WidthOf): readonly unknown[] =>
  tieFormulae(runs).map(({ box, asked = false, ...run }) => {
    if (!box) return run;
    const source = Math.min(1, box.width / Math.max(widthOf(run.text, false), Number.EPSILON));
    return { ...run, asked, drawn: { ...box, source, overhang: overhangOf(run) } };
  });
