import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { defineConfig } from "@playwright/test";

/** Debian's Chromium, or another that is on the path or named in CHROMIUM. */
function chromium(): string {
  const names = ["chromium", "chromium-browser", "google-chrome"];
  const folders = (process.env.PATH ?? "").split(delimiter);
  const candidates = [
    process.env.CHROMIUM ?? "",
    ...folders.flatMap((folder) => names.map((name) => join(folder, name))),
  ];
  for (const path of candidates.filter((one) => one !== "")) {
    try {
      accessSync(path, constants.X_OK);
      return path;
    } catch {
      // Look further.
    }
  }
  throw new Error(
    "The browser tests need Chromium: install Debian's package chromium, or name the program in CHROMIUM.",
  );
}

export default defineConfig({
  testDir: "tests/browser",
  outputDir: "test-results",
  globalSetup: "./tests/support/build-once.ts",
  fullyParallel: false,
  workers: 2,
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: [["list"]],
  forbidOnly: true,
  use: {
    viewport: { width: 1280, height: 800 },
    timezoneId: "Europe/Lisbon",
    locale: "en-GB",
    launchOptions: {
      executablePath: chromium(),
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
});
