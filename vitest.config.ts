import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["src/**/*.test.{ts,tsx}", "tests/**/*.test.ts"],
    exclude: ["tests/browser/**"],
    globalSetup: ["tests/support/build-once.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
