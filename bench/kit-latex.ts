// The pages of a kit as LaTeX source: the same marks at the same places, and text that is made smaller until it fits,
// by trying one size after another as the template of Longhold's own engine does.
import type { KitPage, PageItem, TextItem, TextRun } from "../src/core/kit/page.ts";
import type { Size } from "../src/core/kit/paper.ts";
import { placePicture } from "../src/core/kit/place-picture.ts";

/** The quickest engine, with a font of its own, and the one that reads the fonts of kits. */
export type LatexEngine = "pdflatex" | "lualatex";

/** Files of pictures and their sizes in dots. */
interface Pictures {
  readonly fileOf: (picture: string) => string;
  readonly dotsOf: (picture: string) => Size;
}

/** The source of a document; regular.ttf and bold.ttf must lie beside it. */
export function kitLatex(pages: readonly KitPage[], engine: LatexEngine, pictures: Pictures): string {
  const [first] = pages;
  if (!first) return "";
  const body = pages.map(
    (page) =>
      `\\noindent\\begin{picture}(${page.width},${page.height})%\n${page.items
        .map((item) => drawn(item, page, pictures))
        .join("")}\\end{picture}\\newpage\n`,
  );
  return `${preamble(engine, first)}\\begin{document}\n${body.join("")}\\end{document}\n`;
}

const GREEK = "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho sigma".split(
  " ",
);

/** Greek small letters by name from U+03B1, with final sigma left out. */
const greekLetters = (): string =>
  [...GREEK.slice(0, 17).entries(), [18, "sigma"] as const]
    .filter(([, name]) => name !== "omicron")
    .map(
      ([i, name]) =>
        `\\DeclareUnicodeCharacter{${(0x3b1 + i).toString(16).toUpperCase().padStart(4, "0")}}{\\ensuremath{\\${name}}}`,
    )
    .join("\n");

function preamble(engine: LatexEngine, page: Size): string {
  const font =
    engine === "pdflatex"
      ? `\\usepackage[utf8]{inputenc}\\usepackage[T1]{fontenc}\\usepackage{textcomp,lmodern}
\\renewcommand\\familydefault{\\sfdefault}
\\DeclareUnicodeCharacter{2212}{\\textminus}
${greekLetters()}`
      : `\\usepackage{fontspec}
\\setmainfont{regular.ttf}[Path=./,BoldFont=bold.ttf]`;
  return String.raw`\documentclass{article}
\usepackage[english]{babel}
${font}
\usepackage{graphicx,xcolor}
\usepackage[paperwidth=${page.width}mm,paperheight=${page.height}mm,margin=0mm,noheadfoot]{geometry}
\pagestyle{empty}\parindent=0pt\parskip=0pt\topskip=0pt\unitlength=1mm\linethickness{0.1mm}
\definecolor{text}{HTML}{1D2420}\definecolor{quiet}{HTML}{4F5953}
\newdimen\fs
% width, height, largest and smallest size, look, text: made smaller by half a point until it fits
\def\fit#1#2#3#4#5#6{\fs=#3\relax\fitagain{#1}{#2}{#4}{#5}{#6}}
\def\fitagain#1#2#3#4#5{%
  \setbox0=\vbox{\hsize=#1\relax\fontsize{\fs}{1.3\fs}\selectfont#4#5\par}%
  \let\next\relax
  \ifdim\dimexpr\ht0+\dp0\relax>#2\relax\ifdim\fs>#3\relax
    \advance\fs by -0.5pt\def\next{\fitagain{#1}{#2}{#3}{#4}{#5}}\fi\fi
  \next}
\long\def\inbox#1#2#3{\vbox to #1{\hsize=#2\relax #3}}
`;
}

function drawn(item: PageItem, page: KitPage, pictures: Pictures): string {
  const put = (x: number, y: number, what: string): string => `\\put(${mm(x)},${mm(page.height - y)}){${what}}%\n`;
  if (item.kind === "line") {
    const [width, height] = [item.to[0] - item.from[0], item.to[1] - item.from[1]];
    const upright = Math.abs(width) < Math.abs(height);
    const [x, y] = upright ? item.from : [Math.min(item.from[0], item.to[0]), item.from[1]];
    return upright
      ? put(x, y, `\\line(0,${height < 0 ? 1 : -1}){${mm(Math.abs(height))}}`)
      : put(x, y, `\\line(1,0){${mm(Math.abs(width))}}`);
  }
  if (item.kind === "picture") {
    const at = placePicture(item, pictures.dotsOf(item.picture));
    const size = `width=${mm(at.width)}mm,height=${mm(at.height)}mm`;
    const file = pictures.fileOf(item.picture);
    return put(item.x + at.x, item.y + at.y + at.height, `\\includegraphics[${size}]{${file}}`);
  }
  if (item.kind === "text") return put(item.x, item.y + item.height, textOf(item));
  throw new Error(`no way to draw a ${item.kind} in this comparison`);
}

const mm = (number: number): string => `${+number.toFixed(3)}`;

function textOf(item: TextItem): string {
  const look = { start: "\\raggedright", center: "\\centering", end: "\\raggedleft" }[item.align];
  const text = `\\color{${item.ink}}${item.runs.map(runOf).join("")}`;
  const [above, below] = { top: ["", "\\vss"], middle: ["\\vss", "\\vss"], bottom: ["\\vss", ""] }[item.lie] as [
    string,
    string,
  ];
  const [width, height] = [`${mm(item.width)}mm`, `${mm(item.height)}mm`];
  const fit = `\\fit{${width}}{${height}}{${item.most}pt}{${item.least}pt}{${look}}{${text}}`;
  return `${fit}\\inbox{${height}}{${width}}{${above}\\box0${below}}`;
}

function runOf({ text, look }: TextRun): string {
  const lines = text.split("\n").map(escaped).join("\\newline ");
  return look === "plain" ? lines : `{\\bfseries ${lines}}`;
}

const SPECIAL: Readonly<Record<string, string>> = {
  "\\": "\\textbackslash{}",
  "~": "\\textasciitilde{}",
  "^": "\\textasciicircum{}",
};

const escaped = (text: string): string =>
  text
    .replace(/[\\~^]/g, (sign) => SPECIAL[sign] ?? sign)
    .replace(/(?<!\\textbackslash)[#$%&_]/g, (sign) => `\\${sign}`);
