// The web pages, from the built files. They are few and small, so they are read once and kept.
import { readdirSync, readFileSync } from "node:fs";
import { extname, join, relative, sep } from "node:path";
import type { MiddlewareHandler } from "hono";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".json": "application/json",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

interface PageFile {
  readonly body: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly cache: string;
}

/** Serves the files under `folder`; any other path gets the start page, which finds its way by itself. */
export function pages(folder: string): MiddlewareHandler {
  const files = readFiles(folder);
  const start = files.get("/index.html");
  return async (c) => {
    if (c.req.method !== "GET" && c.req.method !== "HEAD")
      return c.json({ error: "not-found", message: "There is nothing here." }, 404);
    const file = files.get(c.req.path) ?? (extname(c.req.path) === "" ? start : undefined);
    if (!file) return c.text("There is nothing here.", 404);
    return c.body(file.body, 200, { "content-type": file.type, "cache-control": file.cache });
  };
}

function readFiles(folder: string): ReadonlyMap<string, PageFile> {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    paths.map((entry) => {
      const path = join(entry.parentPath ?? entry.path, entry.name);
      const url = `/${relative(folder, path).split(sep).join("/")}`;
      // Built assets carry a hash of their content in their name; everything else may change.
      const cache = url.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache";
      const type = TYPES[extname(entry.name)] ?? "application/octet-stream";
      return [url, { body: new Uint8Array(readFileSync(path)), type, cache }];
    }),
  );
}
