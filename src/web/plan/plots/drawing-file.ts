// A drawing of the page as a file that stands alone: with the colours it has on the screen, a title and a description.

/** What has to be said again where there is no style sheet. */
const STYLES = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "vector-effect",
  "font-family",
  "font-size",
  "font-weight",
  "text-anchor",
] as const;

/** What the drawing says to those who do not see it, and the ground it lies on. */
export interface Said {
  readonly title: string;
  readonly description: string;
}

/** Measures of a drawing that has a name and takes whatever room there is, in CSS pixels. */
const NAMED = { width: 720, height: 140, line: 24, size: 14 } as const;

/**
 * The text of an SVG file of drawings, one below the other; parts marked `data-screen` are left out. A drawing with an
 * `aria-label` has it as a line above, since nothing else in it says what it shows.
 */
export function drawingFile(drawings: readonly SVGSVGElement[], { title, description }: Said): string {
  const sheet = element("svg");
  let [width, height] = [0, 0];
  for (const drawing of drawings) {
    const name = drawing.getAttribute("aria-label");
    const size = name === null ? drawing.getBoundingClientRect() : NAMED;
    if (name !== null) {
      height += NAMED.line;
      sheet.append(nameLine(drawing, name, height - (NAMED.line - NAMED.size) / 2));
    }
    sheet.append(standingAlone(drawing, { y: height, width: size.width, height: size.height }));
    height += size.height;
    width = Math.max(width, size.width);
  }
  setAll(sheet, { width, height, viewBox: `0 0 ${width} ${height}`, role: "img" });
  const [first] = drawings;
  if (first) sheet.prepend(element("title", title), element("desc", description), ground(first, width, height));
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(sheet)}\n`;
}

function standingAlone(drawing: SVGSVGElement, place: Readonly<Record<string, number>>): SVGElement {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const parts = [...copy.querySelectorAll<SVGElement>("*")];
  for (const [i, part] of [...drawing.querySelectorAll("*")].entries()) takeLooks(part, parts[i]);
  for (const part of copy.querySelectorAll("[data-screen]")) part.remove();
  for (const name of ["class", "style", "role", "aria-hidden", "aria-label"]) copy.removeAttribute(name);
  setAll(copy, place);
  return copy;
}

function nameLine(drawing: SVGSVGElement, name: string, y: number): SVGElement {
  const line = element("text", name);
  const { fontFamily, color } = getComputedStyle(drawing);
  setAll(line, { x: 0, y, fill: color, "font-family": fontFamily, "font-size": `${NAMED.size}px` });
  return line;
}

function setAll(part: SVGElement, values: Readonly<Record<string, string | number>>): void {
  for (const [name, value] of Object.entries(values)) part.setAttribute(name, String(value));
}

function takeLooks(seen: Element, copy: SVGElement | undefined): void {
  const looks = getComputedStyle(seen);
  for (const name of STYLES) copy?.setAttribute(name, looks.getPropertyValue(name));
  copy?.removeAttribute("class");
}

function element(name: string, text = ""): SVGElement {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  made.textContent = text;
  return made;
}

/** The colour that shines through the drawing on the screen. */
function ground(drawing: SVGSVGElement, width: number, height: number): SVGElement {
  const made = element("rect");
  const colours = ancestors(drawing).map((one) => getComputedStyle(one).backgroundColor);
  const seen = colours.find((colour) => colour !== "rgba(0, 0, 0, 0)" && colour !== "transparent");
  setAll(made, { width, height, fill: seen ?? "none" });
  return made;
}

function ancestors(element: Element): readonly Element[] {
  const all: Element[] = [];
  for (let at = element.parentElement; at; at = at.parentElement) all.push(at);
  return all;
}
