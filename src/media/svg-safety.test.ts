import { describe, expect, it } from "vitest";
import { checkSvg } from "./svg-safety.ts";

const XMLNS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
const svg = (inside: string): string => `<svg ${XMLNS} viewBox="0 0 10 10">${inside}</svg>`;
const DOT = "iVBORw0KGgo=";

function safe(text: string) {
  const result = checkSvg(Buffer.from(text, "utf8"));
  if (!result.ok) throw new Error(result.error);
  return result.value;
}

const reason = (text: string | Uint8Array): string => {
  const result = checkSvg(typeof text === "string" ? Buffer.from(text, "utf8") : text);
  return result.ok ? "it passed" : result.error;
};

describe("a drawing passes", () => {
  it("with shapes, gradients and fragments of its own", () => {
    const inside =
      '<defs><linearGradient id="g"/><style>.a { fill: url(#g) } /* night */</style></defs>' +
      '<rect fill="url(#g)" style="filter:url( \'#f\' )"/><use xlink:href="#r"/><text>a &lt; b, url(no)</text>';
    expect(safe(svg(inside)).svg).toBe(svg(inside));
  });

  it("with bitmaps inside, which are handed out to be checked", () => {
    const { bitmaps } = safe(
      svg(`<image href="data:image/png;base64,${DOT}"/><image xlink:href=" data:image/jpeg;base64,AAAA"/>`),
    );
    expect(bitmaps.map((bitmap) => Buffer.from(bitmap).toString("base64"))).toEqual([DOT, "AAAA"]);
  });

  it("without its declarations and remarks, which are dropped", () => {
    const head =
      '<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/svg11.dtd">\n';
    expect(safe(`${head}<!-- stars -->${svg("<!-- <script> --><g/>")}`).svg).toBe(svg("<g/>"));
  });

  it("in UTF-16 with a mark, and comes out to be written as UTF-8", () => {
    const result = checkSvg(Buffer.from(`\ufeff${svg("<text>ö</text>")}`, "utf16le"));
    expect(result).toMatchObject({ ok: true, value: { svg: svg("<text>ö</text>") } });
  });
});

describe("a drawing is refused", () => {
  const scripts = [
    "<script>alert(1)</script>",
    "<SCRIPT/>",
    "<s:script xmlns:s='http://www.w3.org/2000/svg'/>",
    '<rect onclick="alert(1)"/>',
    "<rect\nOnLoad = 'alert(1)'/>",
    "<foreignObject><p>hello</p></foreignObject>",
    "<iframe/>",
    '<a href="javascript:alert(1)"/>',
    '<a xlink:href=" java&#115;cript:alert(1)"/>',
    '<image href="data:text/html;base64,AAAA"/>',
  ];
  it.each(scripts)("for active content: %s", (inside) => {
    expect(reason(svg(inside))).toMatch(/active content/);
  });

  const outside = [
    '<image href="file:///secret.png"/>',
    '<image xlink:href="http://hilltop.example/moon.png"/>',
    '<image href="//hilltop.example/moon.png"/>',
    '<image href="moon.png"/>',
    '<use href="other.svg#moon"/>',
    '<use href="&#x68;ttp://hilltop.example/#a"/>',
    '<image href="data:image/svg+xml;base64,AAAA"/>',
    '<rect fill="url(http://hilltop.example/a.svg#g)"/>',
    '<rect style="fill:url(&quot;other.svg#g&quot;)"/>',
    '<rect style="fill:u\\72 l(other.svg#g)"/>',
    '<rect style="fill:url/**/(other.svg)"/>',
    "<style>@import 'http://hilltop.example/a.css';</style>",
    "<style>@im<!-- -->port 'a.css';</style>",
    "<style>@\\69mport 'a.css';</style>",
    "<style><![CDATA[ .a { fill: URL( 'a.svg#g' ) } ]]></style>",
    "<style>.a { fill: u</style><g/><style>.b { fill: url(a.svg) }</style>",
    '<g xml:base="http://hilltop.example/"/>',
  ];
  it.each(outside)("for what is not inside it: %s", (inside) => {
    expect(reason(svg(inside))).toMatch(/outside itself/);
  });

  it("for a style sheet beside it", () => {
    expect(reason(`<?xml-stylesheet href="a.css"?>${svg("")}`)).toMatch(/outside itself/);
  });

  it("for entities of its own, one or a billion", () => {
    const file = '<!DOCTYPE svg [<!ENTITY secret SYSTEM "file:///secret">]>';
    const lol = '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]>';
    expect(reason(file + svg("<text>&secret;</text>"))).toMatch(/entities/);
    expect(reason(lol + svg("<text>&b;</text>"))).toMatch(/entities/);
    expect(reason(svg("<!ENTITY a 'ha'>"))).toMatch(/entities/);
    expect(reason(svg('<rect fill="&secret;"/>'))).toMatch(/entities/);
  });

  it("that is cut off or broken", () => {
    for (const text of [
      "<svg",
      '<svg a="',
      "<svg><!--",
      "<svg><![CDATA[",
      "<svg><a b=c/></svg>",
      "<svg><style>a",
      "<svg><style><style></style>@import 'a';</style></svg>",
    ]) {
      expect(reason(text)).toMatch(/cannot be read/);
    }
  });

  it("that is something else, or not in UTF-8", () => {
    expect(reason("<html><svg/></html>")).toMatch(/not an SVG/);
    expect(reason("stars")).toMatch(/not an SVG/);
    expect(reason(Buffer.from("<svg>\u00e9</svg>", "latin1"))).toMatch(/UTF-8/);
  });
});

// Each of these has a start that is found again and again, and an end that is never found.
describe("time stays linear", () => {
  const N = 200_000;
  const hostile: readonly (readonly [string, string])[] = [
    ["remarks in a style sheet", svg(`<style>${"/*".repeat(N)}</style>`)],
    ["references in a style sheet", svg(`<style>${"url(#".repeat(N)}</style>`)],
    ["blanks in a tag", `<svg ${" ".repeat(N)}`],
    ["a long name in a tag", `<svg ${"a".repeat(N)}`],
    ["open tags", "<svg>".repeat(N)],
    ["character references", svg(`<g id="${"&#".repeat(N)}"/>`)],
  ];
  it.each(hostile)("for many %s", (_, text) => {
    const start = performance.now();
    checkSvg(Buffer.from(text));
    expect(performance.now() - start).toBeLessThan(2000);
  });
});
