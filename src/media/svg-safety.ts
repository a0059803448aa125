// Which drawings are safe to draw? Only those that hold everything themselves and do nothing: no scripts, no event
// handlers, no foreign content, no entities, no reference to anything outside. What passes is rewritten as plain
// UTF-8 without declarations, so that nothing later can read it differently from how it was checked here.
import { fail, ok, type Result } from "../core/result.ts";

/** A drawing that may be drawn, and the bitmaps inside it, which still have to be checked for their size. */
export interface SafeSvg {
  readonly svg: string;
  readonly bitmaps: readonly Uint8Array[];
}

const FORBIDDEN = new Set([
  "script",
  "foreignobject",
  "iframe",
  "object",
  "embed",
  "audio",
  "video",
  "handler",
  "listener",
]);
const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const BITMAP = /^data:image\/(?:png|jpe?g|gif|webp);base64,/i;

const REASONS = {
  unreadable: "the drawing cannot be read: open it in the program that made it and save it again",
  encoding: "the drawing is not written in UTF-8: open it in the program that made it and save it again",
  notSvg: "the file is not an SVG drawing",
  script: "the drawing holds a script or other active content: save it as a plain SVG or as PNG",
  entities: "the drawing declares entities of its own, which could be misused: save it as a plain SVG or as PNG",
  outside: "the drawing refers to something outside itself: put everything into the drawing, or save it as PNG",
} as const;

/** Refusals travel as this inside the file and leave it as a `Result`. */
class Refusal extends Error {}

/** Checks a drawing as text. Fails with the reason, in words for the person who chose it. Linear in its length. */
export function checkSvg(bytes: Uint8Array): Result<SafeSvg, string> {
  const text = svgText(bytes);
  if (text === null) return fail(REASONS.encoding);
  try {
    return ok(new SvgCheck(text).run());
  } catch (error) {
    if (error instanceof Refusal) return fail(error.message);
    throw error;
  }
}

function svgText(bytes: Uint8Array): string | null {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "utf-8";
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** One walk through the markup. A class because the walk has a position, an output and an open style sheet. */
class SvgCheck {
  private at = 0;
  private started = false;
  private styles: string | null = null;
  private readonly kept: string[] = [];
  private readonly bitmaps: Uint8Array[] = [];

  constructor(private readonly text: string) {}

  run(): SafeSvg {
    for (;;) {
      const next = this.text.indexOf("<", this.at);
      const between = this.text.slice(this.at, next < 0 ? undefined : next);
      if (this.styles !== null) this.styles += decodeEntities(between);
      if (this.started) this.kept.push(between);
      if (next < 0) break;
      this.at = next;
      this.readMarkup();
    }
    if (!this.started) refuse("notSvg");
    if (this.styles !== null) refuse("unreadable");
    return { svg: this.kept.join(""), bitmaps: this.bitmaps };
  }

  private readMarkup(): void {
    if (this.starts("<!--")) this.through("-->");
    else if (this.starts("<![CDATA[")) this.readCdata();
    else if (this.starts("<!")) this.readDeclaration();
    else if (this.starts("<?")) this.readInstruction();
    else if (this.starts("</")) this.readEndTag();
    else this.readStartTag();
  }

  private starts(token: string): boolean {
    return this.text.startsWith(token, this.at);
  }

  /** Moves behind the next `token` and gives what was passed. */
  private through(token: string): string {
    const end = this.text.indexOf(token, this.at);
    if (end < 0) return refuse("unreadable");
    const passed = this.text.slice(this.at, end + token.length);
    this.at = end + token.length;
    return passed;
  }

  private readCdata(): void {
    const passed = this.through("]]>");
    if (this.styles !== null) this.styles += passed.slice("<![CDATA[".length, -"]]>".length);
    this.kept.push(passed);
  }

  /** A bare document type is harmless and dropped; one with declarations inside is not. */
  private readDeclaration(): void {
    const passed = this.through(">");
    if (this.started || !/^<!DOCTYPE\s/i.test(passed) || passed.includes("[")) refuse("entities");
  }

  private readInstruction(): void {
    if (/^<\?xml-stylesheet/i.test(this.through("?>"))) refuse("outside");
  }

  private readEndTag(): void {
    const passed = this.through(">");
    if (localName(passed.slice(2, -1).trim()) === "style" && this.styles !== null) {
      this.checkCss(this.styles);
      this.styles = null;
    }
    this.kept.push(passed);
  }

  private readStartTag(): void {
    const start = this.at;
    const name = this.match(/<([^\s/>"'=<]+)/y)?.[1];
    if (!name) refuse("unreadable");
    const local = localName(name ?? "");
    if (!this.started && local !== "svg") refuse("notSvg");
    this.started = true;
    if (FORBIDDEN.has(local)) refuse("script");
    // A style sheet is text; elements inside one could only confuse where it ends.
    if (this.styles !== null) refuse("unreadable");
    for (let found = this.matchAttribute(); found; found = this.matchAttribute()) {
      this.checkAttribute(found[1] ?? "", decodeEntities((found[2] ?? "").slice(1, -1)));
    }
    const end = this.match(/\s*(\/?)>/y);
    if (!end) refuse("unreadable");
    if (local === "style" && end?.[1] === "") this.styles = "";
    this.kept.push(this.text.slice(start, this.at));
  }

  private matchAttribute(): RegExpExecArray | null {
    return this.match(/\s*([^\s=/>"'<]+)\s*=\s*("[^"<]*"|'[^'<]*')/y);
  }

  private match(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found) this.at = pattern.lastIndex;
    return found;
  }

  private checkAttribute(name: string, value: string): void {
    const local = localName(name);
    if (/^on[a-z]/i.test(name)) refuse("script");
    if (name.toLowerCase() === "xml:base") refuse("outside");
    if (local === "href" || local === "src") this.checkReference(value);
    else if (/[(\\@]/.test(value)) this.checkCss(value);
  }

  private checkReference(reference: string): void {
    const plain = reference.replace(/[\s\p{Cc}]/gu, "");
    if (plain.startsWith("#")) return;
    const bitmap = BITMAP.exec(plain);
    if (!bitmap) {
      refuse(/^(?:javascript|vbscript|data:text)/i.test(plain) ? "script" : "outside");
    }
    this.bitmaps.push(Buffer.from(plain.slice(bitmap?.[0].length), "base64"));
  }

  private checkCss(css: string): void {
    const plain = withoutComments(css)
      .replace(/\\([\da-f]{1,6})\s?/gi, (_, hex: string) => codePoint(Number.parseInt(hex, 16)))
      .replaceAll("\\", "");
    if (/@import/i.test(plain)) refuse("outside");
    for (const [, reference] of plain.matchAll(/url\(\s*["']?([^)"']*)/gi)) this.checkReference(reference ?? "");
  }
}

function refuse(reason: keyof typeof REASONS): never {
  throw new Refusal(REASONS[reason]);
}

const localName = (name: string): string => name.slice(name.indexOf(":") + 1).toLowerCase();

function withoutComments(css: string): string {
  const kept: string[] = [];
  let at = 0;
  for (let open = css.indexOf("/*"); open >= 0; open = css.indexOf("/*", at)) {
    kept.push(css.slice(at, open));
    const close = css.indexOf("*/", open + 2);
    if (close < 0) return kept.join("");
    at = close + 2;
  }
  return kept.join("") + css.slice(at);
}

const codePoint = (code: number): string => (code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : "");

function decodeEntities(text: string): string {
  if (!text.includes("&")) return text;
  return text.replace(/&(#x[\da-f]{1,8}|#\d{1,8}|\w+)?;?/gi, (_, name: string | undefined) => {
    if (name === undefined) return refuse("unreadable");
    if (name.startsWith("#")) {
      return codePoint(/^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number.parseInt(name.slice(1), 10));
    }
    return ENTITIES[name] ?? refuse("entities");
  });
}
