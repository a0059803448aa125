// The rules of the folders, as checks over source files given by path and text.
import { posix } from "node:path";
import { importsOf, stripSource } from "./source-text.ts";

/** Source files by their path from the root of the repository, with forward slashes. */
export type Sources = ReadonlyMap<string, string>;

type Folder = "core" | "app" | "store" | "exchange" | "media" | "kit" | "demo" | "server" | "cli" | "web";

/** Which folders a folder may import from, itself aside. The order is the order in which the work flows. */
const ARROWS: Readonly<Record<Folder, readonly Folder[]>> = {
  core: [],
  app: ["core"],
  store: ["app", "core"],
  exchange: ["app", "core"],
  media: ["app", "core"],
  kit: ["app", "core"],
  demo: ["app", "core"],
  server: ["app", "core", "exchange", "media", "kit", "demo", "store"],
  cli: ["app", "core", "exchange", "media", "kit", "demo", "store", "server"],
  web: ["core"],
};

/** What the pages may import from elsewhere, types only. */
const WEB_TYPES = (target: string): boolean =>
  target.startsWith("src/app/") || /^src\/server\/(paper-)?schemas\.ts$/.test(target);

/** Most lines of a source file. */
const MOST_LINES = 400;

/** What the core may not touch: clock, chance and host come from outside. */
const HOST: readonly (readonly [name: string, pattern: RegExp])[] = [
  ["Date.now", /\bDate\s*\.\s*now\b/],
  ["new Date without an argument", /\bnew\s+Date\b(?!\s*\(\s*[^\s)])/],
  ["Date called for the time", /(?<!\bnew\s)(?<![\w$.])Date\s*\(/],
  ["Math.random", /\bMath\s*\.\s*random\b/],
  ["console", /\bconsole\b/],
  ["process", /\bprocess\s*[.[]/],
  ["a timer", /\b(setTimeout|setInterval|setImmediate|queueMicrotask|requestAnimationFrame)\b/],
  ["fetch", /\bfetch\s*\(/],
  ["performance", /\bperformance\s*\./],
  ["crypto", /\bcrypto\s*\./],
  ["globalThis", /\bglobalThis\b/],
];

const folderOf = (path: string): string => path.split("/")[1] ?? "";

/** The file that a specifier names, seen from a file; null for a package or a builtin. */
const resolved = (from: string, specifier: string): string | null =>
  specifier.startsWith(".") ? posix.normalize(posix.join(posix.dirname(from), specifier)) : null;

/** Imports that go against the arrows, each as one sentence. */
export function wrongArrows(sources: Sources): readonly string[] {
  const wrong: string[] = [];
  for (const [path, text] of sources) {
    const folder = folderOf(path);
    const allowed = ARROWS[folder as Folder];
    if (!allowed) {
      wrong.push(`${path} is in a folder that has no rule`);
      continue;
    }
    for (const { specifier, typeOnly } of importsOf(text)) {
      const target = resolved(path, specifier);
      if (target === null) {
        if (folder === "core") wrong.push(`${path} imports the package ${specifier}`);
        continue;
      }
      const to = folderOf(target);
      if (target.startsWith("src/") && (to === folder || allowed.includes(to as Folder))) continue;
      if (folder === "web" && typeOnly && WEB_TYPES(target)) continue;
      // The version stands in package.json; the built pages lie beside the built program.
      if (!target.startsWith("src/") && folder !== "core" && !/\.[cm]?[jt]sx?$/.test(target)) continue;
      if (target === "src/web" && folder === "server") continue;
      wrong.push(`${path} imports ${target}`);
    }
  }
  return wrong;
}

/** Circles of imports, types included, each as the files on it. */
export function importCycles(sources: Sources): readonly (readonly string[])[] {
  const targets = (path: string): readonly string[] =>
    importsOf(sources.get(path) ?? "").flatMap(({ specifier }) => {
      const target = resolved(path, specifier);
      return target !== null && sources.has(target) ? [target] : [];
    });
  const cycles: string[][] = [];
  const done = new Set<string>();
  const walk = (path: string, trail: readonly string[]): void => {
    const at = trail.indexOf(path);
    if (at >= 0) cycles.push(trail.slice(at));
    if (at >= 0 || done.has(path)) return;
    for (const target of targets(path)) walk(target, [...trail, path]);
    done.add(path);
  };
  for (const path of sources.keys()) walk(path, []);
  return cycles;
}

/** Files that are too long to be read. */
export const longFiles = (sources: Sources): readonly string[] =>
  [...sources]
    .map(([path, text]) => ({ path, lines: text.replace(/\n$/, "").split("\n").length }))
    .filter(({ lines }) => lines > MOST_LINES)
    .map(({ path, lines }) => `${path} has ${lines} lines`);

/** Places in the core that reach for a clock, for chance or for a host. */
export function hostInCore(sources: Sources): readonly string[] {
  const found: string[] = [];
  for (const [path, text] of sources) {
    if (folderOf(path) !== "core") continue;
    const lines = stripSource(text, "blank").split("\n");
    lines.forEach((line, i) => {
      for (const [name, pattern] of HOST) if (pattern.test(line)) found.push(`${path}:${i + 1} uses ${name}`);
    });
  }
  return found;
}
