// Reading source text without a parser: comments taken out, imports found.

/** What one import statement brings in, and whether only types. */
export interface ImportFound {
  readonly specifier: string;
  readonly typeOnly: boolean;
}

/** The text with comments blanked out and, if asked, the insides of strings too; line breaks stay. */
export function stripSource(source: string, strings: "keep" | "blank"): string {
  let out = "";
  let i = 0;
  while (i < source.length) {
    const two = source.slice(i, i + 2);
    const c = source[i] as string;
    if (two === "//" || two === "/*") {
      const close = two === "//" ? source.indexOf("\n", i) : source.indexOf("*/", i) + 2;
      const end = close < i + 1 ? source.length : close;
      out += blank(source.slice(i, end));
      i = end;
    } else if (c === '"' || c === "'" || c === "`") {
      const end = endOfString(source, i);
      const text = source.slice(i, end);
      if (strings === "keep") out += text;
      else out += c === "`" ? blankTemplate(text) : c + blank(text.slice(1, -1)) + c;
      i = end;
    } else if (c === "/" && startsRegExp(out)) {
      const end = endOfRegExp(source, i);
      out += blank(source.slice(i, end));
      i = end;
    } else {
      out += c;
      i++;
    }
  }
  return out;
}

const blank = (text: string): string => text.replace(/[^\n]/g, " ");

/** A template whose words are blanked out and whose ${...} stand as the code that they are. */
function blankTemplate(template: string): string {
  let out = "";
  let i = 0;
  while (i < template.length) {
    if (template[i] === "\\") {
      out += blank(template.slice(i, i + 2));
      i += 2;
    } else if (template.startsWith("${", i)) {
      const end = endOfHole(template, i + 2);
      out += `  ${stripSource(template.slice(i + 2, end - 1), "blank")};`;
      i = end;
    } else {
      out += blank(template[i] as string);
      i++;
    }
  }
  return out;
}

/** A template's text up to its end; what stands in ${...} is taken as part of the string. */
function endOfString(source: string, start: number): number {
  const quote = source[start] as string;
  let i = start + 1;
  while (i < source.length && source[i] !== quote) {
    if (source[i] === "\\") i++;
    else if (quote === "`" && source.startsWith("${", i)) i = endOfHole(source, i + 2) - 1;
    i++;
  }
  return Math.min(i + 1, source.length);
}

function endOfHole(source: string, start: number): number {
  let depth = 1;
  let i = start;
  while (i < source.length && depth > 0) {
    const c = source[i] as string;
    if (c === '"' || c === "'" || c === "`") i = endOfString(source, i) - 1;
    else if (c === "{") depth++;
    else if (c === "}") depth--;
    i++;
  }
  return i;
}

/** A slash opens a regular expression where a value may begin. */
const startsRegExp = (before: string): boolean => /(^|[=(,:;!&|?{}[+\n]|=>|\breturn)\s*$/.test(before.slice(-40));

function endOfRegExp(source: string, start: number): number {
  let inClass = false;
  for (let i = start + 1; i < source.length; i++) {
    const c = source[i];
    if (c === "\\") i++;
    else if (c === "\n") return start + 1;
    else if (c === "[") inClass = true;
    else if (c === "]") inClass = false;
    else if (c === "/" && !inClass) return i + 1;
  }
  return source.length;
}

const STATEMENT = /(?:^|[\s;}])(import|export)(\s+type)?\s*((?:[\w$*\s,]|\{[^}]*\})*?)\s*from\s*["']([^"']+)["']/g;
const BARE_IMPORT = /(?:^|[\s;}])import\s*["']([^"']+)["']/g;
const CALLED = /(?:\bimport\s*\(\s*|\bnew\s+URL\s*\(\s*|\brequire\s*\(\s*)["'](\.{1,2}\/[^"']+|[^"'./:][^"':]*)["']/g;

/** Everything that a source file imports, statically, dynamically or as the address of a worker. */
export function importsOf(source: string): readonly ImportFound[] {
  const text = stripSource(source, "keep");
  const found: ImportFound[] = [];
  for (const [, , type, names = "", specifier = ""] of text.matchAll(STATEMENT)) {
    found.push({ specifier, typeOnly: type !== undefined || onlyTypes(names) });
  }
  for (const [, specifier = ""] of text.matchAll(BARE_IMPORT)) found.push({ specifier, typeOnly: false });
  for (const [, specifier = ""] of text.matchAll(CALLED)) found.push({ specifier, typeOnly: false });
  return found;
}

/** `{ type A, type B }` brings in nothing at run time. */
function onlyTypes(names: string): boolean {
  const inside = /^\s*\{([^}]*)\}\s*$/.exec(names)?.[1];
  const parts = inside?.split(",").map((part) => part.trim()) ?? [];
  return parts.some((part) => part !== "") && parts.every((part) => part === "" || part.startsWith("type "));
}
