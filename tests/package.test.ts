// The package as others get it: packed, installed in an empty folder, and run there, pages included.
import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { startProcess, withFolder } from "./support/program.ts";

const root = fileURLToPath(new URL("..", import.meta.url));

test("the packed package installs in an empty folder and serves its pages from there", () =>
  withFolder(async (folder) => {
    execFileSync("npm", ["pack", "--ignore-scripts", "--pack-destination", folder], { cwd: root, stdio: "pipe" });
    const packed = readdirSync(folder).find((name) => name.endsWith(".tgz")) ?? "";
    const home = join(folder, "home");
    mkdirSync(home);
    writeFileSync(join(home, "package.json"), "{}");
    // The database binding is compiled once for this machine; compiling it again would prove nothing more.
    execFileSync("npm", ["install", "--ignore-scripts", "--no-audit", "--no-fund", join(folder, packed)], {
      cwd: home,
      stdio: "pipe",
    });
    const binding = "node_modules/better-sqlite3/build/Release/better_sqlite3.node";
    cpSync(join(root, binding), join(home, binding));
    const program = join(home, "node_modules/longhold/bin/longhold.js");
    const server = await startProcess(["serve", "--no-open", "--port", "0", "--data", join(folder, "data")], program);
    const page = await (await fetch(server.url)).text();
    const script = /src="(\/assets\/[^"]+\.js)"/.exec(page)?.[1] ?? "";
    expect((await fetch(server.url + script)).headers.get("content-type")).toContain("javascript");
    const assets = readdirSync(join(home, "node_modules/longhold/dist/web/assets"));
    const decoder = assets.find((name) => name.endsWith(".wasm"));
    expect((await fetch(`${server.url}/assets/${decoder}`)).headers.get("content-type")).toBe("application/wasm");
    expect((await (await fetch(`${server.url}/api/demo`, { method: "POST" })).json()) as object).toMatchObject({
      demo: true,
    });
    await server.end("SIGTERM");
  }));

test("the first page needs less than 180 kB of compressed JavaScript", () => {
  const folder = join(root, "dist/web");
  const page = readFileSync(join(folder, "index.html"), "utf8");
  const scripts = [...page.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g)].map((match) => match[1] ?? "");
  expect(scripts.length).toBeGreaterThan(0);
  const bytes = scripts.reduce((sum, path) => sum + gzipSync(readFileSync(join(folder, path))).length, 0);
  expect(bytes).toBeLessThan(180_000);
});
