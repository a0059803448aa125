// How the pages are built: static files in dist/web that the server hands out under a strict content policy.
import { defineConfig } from "vite";

export default defineConfig(({ command }) => ({
  root: "src/web",
  base: "/",
  // Built pages are the real ones whoever builds them, test runners included.
  define: command === "build" ? { "process.env.NODE_ENV": '"production"' } : {},
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    // The content policy allows no data: fonts and no inline scripts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // light-dark() is used as written instead of being lowered.
    cssTarget: ["chrome123", "firefox120", "safari17.5"],
    // "use client" means nothing here: there is no server rendering.
    rolldownOptions: { onwarn: (warning, warn) => warning.code === "MODULE_LEVEL_DIRECTIVE" || warn(warning) },
  },
  server: { proxy: { "/api": process.env.LONGHOLD_URL ?? "http://127.0.0.1:4600" } },
}));
