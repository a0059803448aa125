// Builds dist/: the program with the TypeScript compiler, the pages with Vite. With --if-needed it does
// nothing when dist/ is newer than everything it is made from, so starting is quick the second time.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const stamp = join(root, "dist", ".built");
const sources = ["src", "package-lock.json", "tsconfig.base.json", "tsconfig.build.json", "vite.config.ts"];

function newest(path) {
  const info = statSync(path);
  if (!info.isDirectory()) return info.mtimeMs;
  return Math.max(info.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function upToDate() {
  if (!existsSync(stamp)) return false;
  const built = statSync(stamp).mtimeMs;
  return sources.every((name) => newest(join(root, name)) <= built);
}

function run(tool, args) {
  // Standard output belongs to whoever asked for the build; what the tools say goes to standard error.
  const done = spawnSync(process.execPath, [join(root, "node_modules", tool), ...args], {
    cwd: root,
    stdio: ["ignore", "pipe", "inherit"],
    // Test runners set NODE_ENV; what is built is always the real thing.
    env: { ...process.env, NODE_ENV: "production" },
  });
  if (done.status === 0) return;
  process.stderr.write(done.stdout ?? "");
  process.stderr.write(`longhold: the build failed in ${tool}\n`);
  process.exit(1);
}

if (!process.argv.includes("--if-needed") || !upToDate()) {
  // Built beside the old one and then exchanged: a running program never sees half a build, and a build
  // that fails changes nothing.
  const fresh = join(root, `dist.${process.pid}`);
  const old = `${fresh}.old`;
  process.on("exit", () => [fresh, old].forEach((folder) => void rmSync(folder, { recursive: true, force: true })));
  run("typescript/bin/tsc", ["-p", "tsconfig.build.json", "--outDir", fresh]);
  run("vite/bin/vite.js", ["build", "--logLevel", "warn", "--outDir", join(fresh, "web")]);
  writeFileSync(join(fresh, ".built"), "");
  if (existsSync(join(root, "dist"))) renameSync(join(root, "dist"), old);
  renameSync(fresh, join(root, "dist"));
}
