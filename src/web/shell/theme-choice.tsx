// The small choice between light, dark and what the device says.
import { useState } from "react";
import { chooseTheme, readTheme, type Theme } from "./theme.ts";

const NAMES: readonly (readonly [Theme, string])[] = [
  ["system", "As the device"],
  ["light", "Light"],
  ["dark", "Dark"],
];

/** Lets the reader choose how the pages are lit. */
export function ThemeChoice() {
  const [theme, setTheme] = useState(readTheme);
  const choose = (value: string): void => {
    const chosen = NAMES.find(([name]) => name === value)?.[0] ?? "system";
    chooseTheme(chosen);
    setTheme(chosen);
  };
  return (
    <label className="theme-choice">
      <span>Lighting</span>
      <select value={theme} onChange={(event) => choose(event.target.value)}>
        {NAMES.map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
