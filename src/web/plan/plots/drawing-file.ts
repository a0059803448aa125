// A drawing of the page as a file that stands alone: with the colours it has on the screen, a title and a description.

/** What has to be said again where there is no style sheet. */
const STYLES = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
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

/** The text of an SVG file of `drawing`; parts marked `data-screen` are left out. */
export function drawingFile(drawing: SVGSVGElement, { title, description }: Said): string {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const parts = [...copy.querySelectorAll<SVGElement>("*")];
  for (const [i, part] of [...drawing.querySelectorAll("*")].entries()) takeLooks(part, parts[i]);
  for (const part of copy.querySelectorAll("[data-screen]")) part.remove();
  for (const name of ["class", "style", "aria-hidden"]) copy.removeAttribute(name);
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("role", "img");
  copy.prepend(element("title", title), element("desc", description), ground(drawing));
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
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
function ground(drawing: SVGSVGElement): SVGElement {
  const made = element("rect");
  const colours = ancestors(drawing).map((one) => getComputedStyle(one).backgroundColor);
  const seen = colours.find((colour) => colour !== "rgba(0, 0, 0, 0)" && colour !== "transparent");
  const { x, y, width, height } = drawing.viewBox.baseVal;
  for (const [name, value] of Object.entries({ x, y, width, height, fill: seen ?? "none" }))
    made.setAttribute(name, String(value));
  return made;
}

function ancestors(element: Element): readonly Element[] {
  const all: Element[] = [];
  for (let at = element.parentElement; at; at = at.parentElement) all.push(at);
  return all;
}
