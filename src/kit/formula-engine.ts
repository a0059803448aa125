// MathJax as it is used here: a formula in, outlines of its characters out (SVG). Nothing of it can read files, load
// more of itself, link, or take markup: the parts that do are not loaded.
import type { InputJax, MathEngine } from "mathjax";

/** What becomes of a formula: its drawing. Rejects if the notation is not understood. */
export interface FormulaEngine {
  /** From TeX; what a formula defines is forgotten after it. */
  fromTex(tex: string): Promise<string>;
  fromMathml(markup: string): Promise<string>;
}

const PACKAGES = [
  "base",
  "ams",
  "boldsymbol",
  "braket",
  "cancel",
  "cases",
  "centernot",
  "color",
  "enclose",
  "extpfeil",
  "gensymb",
  "mathtools",
  "newcommand",
  "textcomp",
  "textmacros",
  "units",
  "upgreek",
] as const;

/** How often macros may be replaced in one formula, and how long it may become. */
const LIMITS = { maxMacros: 500, maxBuffer: 5_000 } as const;

/** The engine reckons in pixels where units of length are; a line is never full. */
const SETTING = { display: false, em: 16, ex: 8, containerWidth: 1e6 } as const;

let loading: Promise<FormulaEngine> | null = null;

/** Loads the engine when it is first asked for, which takes a moment. */
export function formulaEngine(): Promise<FormulaEngine> {
  loading ??= load();
  return loading;
}

async function load(): Promise<FormulaEngine> {
  const { default: engine } = await import("mathjax");
  const parts = PACKAGES.filter((name) => name !== "base").map((name) => `[tex]/${name}`);
  await engine.init({
    loader: { load: ["input/tex-base", "input/mml", "output/svg", ...parts] },
    svg: { fontCache: "none", linebreaks: { inline: false } },
    startup: { typeset: false },
  });
  engine._.mathjax.mathjax.handlers.register(engine.startup.handler);
  const { TeX } = engine._.input.tex_ts;
  const { MathML } = engine._.input.mathml_ts;
  const reading = { ...LIMITS, packages: [...PACKAGES], formatError: refuse };
  return {
    fromTex: (tex) => draw(engine, new TeX(reading), tex),
    fromMathml: (markup) => draw(engine, new MathML(), markup),
  };
}

/** Instead of drawing the words of an error as if they were a formula. */
function refuse(_: unknown, { message }: { readonly message: string }): never {
  throw new Error(message);
}

async function draw({ startup, _: { mathjax } }: MathEngine, input: InputJax, source: string): Promise<string> {
  const { adaptor, output } = startup;
  const page = mathjax.mathjax.document(adaptor.parse("<p></p>"), { InputJax: input, OutputJax: output });
  const drawn = await page.convertPromise(source, SETTING);
  if (adaptor.childNodes(drawn).length !== 1) throw new Error("the formula came out in pieces");
  return adaptor.serializeXML(adaptor.firstChild(drawn));
}
