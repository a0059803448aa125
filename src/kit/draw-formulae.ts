// Drawings of the formulae of pages. What the screen refuses is refused here too, because the same program reads the
// formula first. Most are then drawn from their TeX; what only the screen's program knows (chemical equations, the
// shorthands of physics) is drawn from the MathML that the screen shows.
import temml from "temml";
import {
  FORMULA_SCALE,
  formulaeOf,
  isDrawable,
  isReadable,
  refusedNotice,
  type WantedFormula,
} from "../core/kit/formulae.ts";
import type { FormulaBox, KitPage } from "../core/kit/page.ts";
import { printableText } from "../core/kit/printable-text.ts";
import { FORMULA_READING, formulaSource } from "../core/text/formula-limits.ts";
import { type FormulaEngine, formulaEngine } from "./formula-engine.ts";
import { mathmlForPrint } from "./mathml-for-print.ts";

/** A drawing (SVG, in the colour of the text round it), and the room it takes. */
export interface DrawnFormula {
  readonly svg: string;
  readonly box: FormulaBox;
}

/** The formulae of some pages by their keys, and one sentence for each that could not be drawn. */
export interface DrawnFormulae {
  readonly byKey: ReadonlyMap<string, DrawnFormula>;
  readonly notices: readonly string[];
}

/** Longest MathML and SVG of a formula: macros can make very much out of little. */
const LONGEST = { markup: 100_000, drawing: 1_000_000 } as const;
/** How deep elements may lie in each other; the typesetting engine goes down them one by one. */
const DEEPEST = 120;

/** Draws every formula of some pages. Loads what draws them only if there is one. */
export async function drawFormulae(pages: readonly KitPage[]): Promise<DrawnFormulae> {
  const byKey = new Map<string, DrawnFormula>();
  const notices: string[] = [];
  for (const [key, wanted] of formulaeOf(pages)) {
    const drawn = await drawFormula(wanted, await formulaEngine());
    if (drawn) byKey.set(key, drawn);
    else notices.push(refusedNotice(wanted));
  }
  return { byKey, notices };
}

/** Null if the formula cannot be read, or what comes of it is of no use. */
async function drawFormula(wanted: WantedFormula, engine: FormulaEngine): Promise<DrawnFormula | null> {
  if (!isReadable(wanted)) return null;
  const source = formulaSource(printableText(wanted.tex), wanted.alone);
  const markup = readFormula(source);
  if (markup === null) return null;
  return (
    (await orNull(engine.fromTex(source).then(drawingOf))) ??
    (await orNull(engine.fromMathml(mathmlForPrint(markup)).then(drawingOf)))
  );
}

/** Whatever a parser throws at odd notation, exhausted stacks included, means that it is not understood. */
const orNull = <T>(promise: Promise<T | null>): Promise<T | null> => promise.catch(() => null);

function readFormula(source: string): string | null {
  try {
    const markup = temml.renderToString(source, { ...FORMULA_READING, xml: true });
    return markup.length <= LONGEST.markup && depthOf(markup) <= DEEPEST ? markup : null;
  } catch {
    return null;
  }
}

/** What the page's style sheet would say of lines in tables; inner drawings may reach beyond their edges. */
const STYLE =
  "<style>[data-mml-node=mtable]>g>svg{overflow:visible}path[data-c]{stroke-width:3px}line[data-line],rect[data-frame]{stroke-width:70px;fill:none}" +
  ".mjx-dashed{stroke-dasharray:140}.mjx-dotted{stroke-linecap:round;stroke-dasharray:0,140}</style>";

/** Height of a small letter of the engine's typeface, in ems: its unit of length. */
const EX = 0.442;

/** The drawing with its styles and without its source; null if it is of no use. */
function drawingOf(svg: string): DrawnFormula | null {
  const [, drop, width, height] =
    /^<svg style="vertical-align: (-?[\d.]+)(?:ex)?;"[^>]* width="([\d.]+)ex" height="([\d.]+)ex"/.exec(svg) ?? [];
  if (width === undefined || svg.length > LONGEST.drawing || depthOf(svg) > DEEPEST || /\b(NaN|Infinity)\b/.test(svg))
    return null;
  const em = EX * FORMULA_SCALE;
  const depth = -Number(drop) * em;
  const box = { width: Number(width) * em, ascent: Number(height) * em - depth, depth };
  if (!isDrawable(box)) return null;
  return {
    svg: svg.replace(/ data-(latex|mjx)[\w-]*="[^"]*"/g, "").replace(/^<svg[^>]*>/, (open) => `${open}${STYLE}`),
    box,
  };
}

/** How deep elements lie in each other. */
function depthOf(xml: string): number {
  let [depth, deepest] = [0, 0];
  for (const [, closing, empty] of xml.matchAll(/<(\/?)[a-zA-Z][^>]*?(\/?)>/g)) {
    if (closing) depth--;
    else if (!empty) deepest = Math.max(deepest, ++depth);
  }
  return deepest;
}
