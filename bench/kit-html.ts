// The pages of a kit as HTML: the same marks at the same places, and text that is made smaller until it fits, by a
// script in the page.
import type { KitPage, PageItem, TextItem, TextRun } from "../src/core/kit/page.ts";
import type { Size } from "../src/core/kit/paper.ts";
import { placePicture } from "../src/core/kit/place-picture.ts";

/** Addresses of pictures and their sizes in dots. */
interface Pictures {
  readonly fileOf: (picture: string) => string;
  readonly dotsOf: (picture: string) => Size;
}

/** The source of a page to print; regular.ttf and bold.ttf must lie beside it. */
export function kitHtml(pages: readonly KitPage[], pictures: Pictures): string {
  const [first] = pages;
  if (!first) return "";
  const sheets = pages.map(
    ({ items }) => `<section>${items.map((item) => drawn(item, pictures)).join("")}</section>\n`,
  );
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>The night sky</title><style>
@font-face { font-family: Noto; src: url("regular.ttf") }
@font-face { font-family: Noto; font-weight: 700; src: url("bold.ttf") }
@page { size: ${first.width}mm ${first.height}mm; margin: 0 }
body { margin: 0; font: 10pt/1.3 Noto; color: #1d2420; hyphens: auto }
section { position: relative; width: ${first.width}mm; height: ${first.height}mm; overflow: hidden; break-after: page; contain: strict }
section * { position: absolute }
.text { display: flex; contain: strict; white-space: pre-wrap }
.text p { position: static; margin: 0; width: 100% } .text b { position: static }
.middle { align-items: center } .bottom { align-items: end }
.center { text-align: center } .end { text-align: end } .quiet { color: #4f5953 }
</style>${sheets.join("")}<script>${FIT}</script></html>`;
}

/** Half a point smaller until it is no higher and no wider than its box. */
const FIT = `
addEventListener("load", () => {
  for (const box of document.querySelectorAll(".text")) {
    const text = box.firstChild;
    let size = Number(box.dataset.most);
    text.style.fontSize = size + "pt";
    while (size > Number(box.dataset.least) &&
        (text.offsetHeight > box.clientHeight || text.scrollWidth > box.clientWidth)) {
      size -= 0.5;
      text.style.fontSize = size + "pt";
    }
  }
});`;

function drawn(item: PageItem, { fileOf, dotsOf }: Pictures): string {
  if (item.kind === "line") {
    const [x, y] = [Math.min(item.from[0], item.to[0]), Math.min(item.from[1], item.to[1])];
    const [width, height] = [Math.abs(item.to[0] - item.from[0]), Math.abs(item.to[1] - item.from[1])];
    const size = { x, y, width: width || item.width, height: height || item.width };
    return `<i style="${place(size)};background:#555"></i>`;
  }
  if (item.kind === "picture") {
    const at = placePicture(item, dotsOf(item.picture));
    const size = { ...at, x: item.x + at.x, y: item.y + at.y };
    return `<img src="${fileOf(item.picture)}" alt="${escaped(item.alt)}" style="${place(size)}">`;
  }
  if (item.kind === "text") return textOf(item);
  throw new Error(`no way to draw a ${item.kind} in this comparison`);
}

const place = (at: Size & { readonly x: number; readonly y: number }): string =>
  `left:${mm(at.x)};top:${mm(at.y)};width:${mm(at.width)};height:${mm(at.height)}`;

const mm = (number: number): string => `${+number.toFixed(3)}mm`;

const textOf = (item: TextItem): string =>
  `<div class="text ${item.lie} ${item.align} ${item.ink}" style="${place(item)}" data-most="${item.most}" data-least="${item.least}"><p>${item.runs.map(runOf).join("")}</p></div>`;

const runOf = ({ text, look }: TextRun): string => (look === "plain" ? escaped(text) : `<b>${escaped(text)}</b>`);

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
