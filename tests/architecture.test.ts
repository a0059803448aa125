// The arrows between the folders, and what the core may not touch; each rule is also shown to catch its breach.
import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { describe, expect, it } from "vitest";
import { hostInCore, importCycles, longFiles, type Sources, wrongArrows } from "./support/architecture-rules.ts";
import { importsOf, stripSource } from "./support/source-text.ts";

const ROOT = join(import.meta.dirname, "..");

/** Everything under src that is shipped: tests left out. */
const SOURCES: Sources = new Map(
  readdirSync(join(ROOT, "src"), { recursive: true, encoding: "utf8" })
    .filter((path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$|\.d\.ts$/.test(path))
    .map((path) => [`src/${path.split(sep).join("/")}`, readFileSync(join(ROOT, "src", path), "utf8")]),
);

const made = (files: Readonly<Record<string, string>>): Sources => new Map(Object.entries(files));

describe("the source", () => {
  it("is found: core, use cases, adapters, edges and pages", () => {
    const folders = new Set([...SOURCES.keys()].map((path) => path.split("/")[1]));
    for (const folder of ["core", "app", "store", "exchange", "media", "kit", "demo", "server", "cli"]) {
      expect(folders).toContain(folder);
    }
    const imports = [...SOURCES.values()].flatMap((text) => importsOf(text));
    expect(imports.length).toBeGreaterThan(SOURCES.size);
  });

  it("imports along the arrows only, types included", () => {
    expect(wrongArrows(SOURCES)).toEqual([]);
  });

  it("has no circle of imports, types included", () => {
    expect(importCycles(SOURCES)).toEqual([]);
  });

  it("has no file of more than 400 lines", () => {
    expect(longFiles(SOURCES)).toEqual([]);
  });

  it("has a core without clock, chance and host", () => {
    expect(hostInCore(SOURCES)).toEqual([]);
  });
});

describe("the rule of the arrows", () => {
  it.each([
    ["the core importing a use case", "src/core/x.ts", 'import { a } from "../app/a.ts";'],
    ["the core importing a type of a use case", "src/core/x.ts", 'import type { A } from "../app/a.ts";'],
    ["the core importing a package", "src/core/x.ts", 'import { z } from "zod";'],
    ["the core importing a builtin", "src/core/x.ts", 'import { join } from "node:path";'],
    ["the core importing for effect", "src/core/x.ts", 'import "some-package";'],
    ["the core importing in a call", "src/core/x.ts", 'const a = await import("../app/a.ts");'],
    ["the core passing something on", "src/core/x.ts", 'export * from "../store/a.ts";'],
    ["the core passing a type on", "src/core/deep/x.ts", 'export type { A } from "../../store/a.ts";'],
    ["a use case importing the store", "src/app/x.ts", 'import { open } from "../store/a.ts";'],
    ["a use case importing a type of the server", "src/app/x.ts", 'import type { S } from "../server/a.ts";'],
    ["the store importing the exchange", "src/store/x.ts", 'import { a } from "../exchange/a.ts";'],
    ["the exchange importing the media", "src/exchange/x.ts", 'import { a } from "../media/a.ts";'],
    ["the kit importing the media", "src/kit/x.ts", 'import { a } from "../media/a.ts";'],
    ["the media importing the store", "src/media/x.ts", 'import { a } from "../store/a.ts";'],
    ["the demo importing the server", "src/demo/x.ts", 'import { a } from "../server/a.ts";'],
    ["the server importing the command line", "src/server/x.ts", 'import { a } from "../cli/a.ts";'],
    ["the server importing a page", "src/server/x.ts", 'import { a } from "../web/a.ts";'],
    ["the command line importing a page", "src/cli/x.ts", 'import type { A } from "../web/a.ts";'],
    ["a page importing a use case", "src/web/x.tsx", 'import { a } from "../app/a.ts";'],
    ["a page importing a use case beside a type", "src/web/x.tsx", 'import { type A, b } from "../app/a.ts";'],
    ["a page importing the schemas", "src/web/x.tsx", 'import { schema } from "../server/schemas.ts";'],
    ["a page importing a type of the server", "src/web/x.tsx", 'import type { A } from "../server/app.ts";'],
    ["a page importing a type of the store", "src/web/x.tsx", 'import type { A } from "../store/a.ts";'],
    ["anything importing a test", "src/app/x.ts", 'import { a } from "../../tests/support/a.ts";'],
    ["a worker of another folder", "src/server/x.ts", 'new Worker(new URL("../cli/a.ts", import.meta.url));'],
    ["a folder that nobody has thought of", "src/misc/x.ts", ""],
    ["an import over several lines", "src/app/x.ts", 'import {\n  a, // why not\n  type B,\n} from "../store/a.ts";'],
  ])("catches %s", (_what, path, text) => {
    expect(wrongArrows(made({ [path]: text }))).toHaveLength(1);
  });

  it.each([
    ["src/core/x.ts", 'import { a } from "./a.ts";\nimport type { B } from "../core/b.ts";'],
    ["src/app/x.ts", 'import { a } from "../core/a.ts";\nimport { b } from "./b.ts";'],
    ["src/store/x.ts", 'import { sql } from "kysely";\nimport type { S } from "../app/ports.ts";'],
    ["src/server/x.ts", 'import { open } from "../store/a.ts";\nnew Worker(new URL("./worker.ts", import.meta.url));'],
    ["src/server/x.ts", 'new URL("../../package.json", import.meta.url); new URL("../web", import.meta.url);'],
    ["src/cli/x.ts", 'import { start } from "../server/start.ts";'],
    ["src/web/x.tsx", 'import type { A } from "../app/a.ts";\nimport { type B } from "../server/schemas.ts";'],
    ["src/web/x.tsx", 'import { a } from "../core/a.ts";\nimport "./x.css";\nimport React from "react";'],
    ["src/core/x.ts", '// import { a } from "../app/a.ts";\n/* import "zod"; */\nconst words = `from "zod"`;'],
  ])("lets pass what is right: %s %s", (path, text) => {
    expect(wrongArrows(made({ [path]: text }))).toEqual([]);
  });
});

describe("the rule of no circles", () => {
  const to = (name: string) => `import type { A } from "./${name}.ts";`;

  it("catches files that import one another, directly or over others, and a file that imports itself", () => {
    expect(importCycles(made({ "src/core/a.ts": to("b"), "src/core/b.ts": to("a") }))).toHaveLength(1);
    expect(importCycles(made({ "src/core/a.ts": to("a") }))).toEqual([["src/core/a.ts"]]);
    const long = { "src/core/a.ts": to("b"), "src/core/b.ts": to("c"), "src/core/c.ts": to("b") };
    expect(importCycles(made(long))).toEqual([["src/core/b.ts", "src/core/c.ts"]]);
  });

  it("lets two ways to one file pass", () => {
    const files = { "src/core/a.ts": `${to("b")}\n${to("c")}`, "src/core/b.ts": to("c"), "src/core/c.ts": "" };
    expect(importCycles(made(files))).toEqual([]);
  });
});

describe("the rule of length", () => {
  it("catches 401 lines and lets 400 pass", () => {
    expect(longFiles(made({ "src/app/a.ts": "x\n".repeat(401) }))).toHaveLength(1);
    expect(longFiles(made({ "src/app/a.ts": "x\n".repeat(400) }))).toEqual([]);
  });
});

describe("the rule of the core's ignorance", () => {
  it.each([
    "const now = Date.now();",
    "const now = new Date();",
    "const now = new Date;",
    "const now = new Date( );",
    "const now = Date();",
    "const n = Math.random();",
    'console.log("x");',
    "const home = process.env.HOME;",
    "setTimeout(go, 1);",
    "setInterval(go, 1);",
    "queueMicrotask(go);",
    'await fetch("/x");',
    "performance.now();",
    "crypto.randomUUID();",
    "globalThis.x = 1;",
    `const text = \`at \${Date.now()} \`;`,
    'const half = /"/.test(text) ? Math.random() : 1;',
  ])("catches %s", (line) => {
    expect(hostInCore(made({ "src/core/x.ts": line }))).toHaveLength(1);
  });

  it.each([
    "const date = new Date(number * DAY_MS);",
    "const number = Date.parse(text);",
    "// Date.now() and Math.random() are banned here",
    "/* console.log */",
    'const words = "console.log(Math.random())";',
    `const text = \`fetch(\${name}) with \${\`setTimeout\`} fetch(\`;`,
    "const processed = prefetch(list);",
    "const update = (Dates: number) => Dates;",
  ])("lets pass %s", (line) => {
    expect(hostInCore(made({ "src/core/x.ts": line }))).toEqual([]);
  });

  it("leaves other folders alone", () => {
    expect(hostInCore(made({ "src/server/x.ts": "Date.now();" }))).toEqual([]);
  });
});

describe("taking comments out", () => {
  it("keeps every line where it was, and strings that look like comments", () => {
    const text = 'const a = "// no comment"; // one\n/* two\nlines */ const b = /[/*]/;\nconst c = `/* no */`;';
    const left = stripSource(text, "keep");
    expect(left.split("\n")).toHaveLength(4);
    expect(left).toContain('"// no comment"');
    expect(left).toContain("`/* no */`");
    expect(left).not.toMatch(/one|two|lines/);
  });
});
