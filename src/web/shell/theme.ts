// Light or dark: the system decides until the reader does.
import { browserShelf } from "../data/storage.ts";

/** What the reader chose; `system` follows the device. */
export type Theme = "system" | "light" | "dark";

const KEY = "longhold.theme";

/** The choice kept in this browser. */
export function readTheme(): Theme {
  const kept = browserShelf.get(KEY);
  return kept === "light" || kept === "dark" ? kept : "system";
}

/** Keeps a choice and shows it. */
export function chooseTheme(theme: Theme): void {
  if (theme === "system") browserShelf.remove(KEY);
  else browserShelf.set(KEY, theme);
  showTheme(theme);
}

/** Shows a theme without keeping it. */
export function showTheme(theme: Theme): void {
  if (theme === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}
