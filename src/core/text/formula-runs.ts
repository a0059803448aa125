// Formulae inside a text. They stand between \( and \), which are LaTeX's own signs for a formula in a line.

/** A stretch of a text: plain, or a formula in TeX notation without its delimiters. */
export interface FormulaRun {
  readonly text: string;
  readonly role: "plain" | "formula";
}

/** Where the formula that begins at `at` ends, behind its \); -1 if none begins there or it never ends. */
export function formulaEnd(text: string, at: number): number {
  if (!text.startsWith("\\(", at)) return -1;
  for (let i = at + 2; i < text.length; i++) {
    if (text[i] !== "\\") continue;
    if (text[i + 1] === ")") return text.slice(at + 2, i).trim() === "" ? -1 : i + 2;
    i++;
  }
  return -1;
}

/** A text divided into plain stretches and formulae; delimiters that do not pair up are plain text. */
export function formulaRuns(text: string): readonly FormulaRun[] {
  if (!text.includes("\\(")) return text === "" ? [] : [{ text, role: "plain" }];
  const runs: FormulaRun[] = [];
  let from = 0;
  const flush = (to: number): void => {
    if (to > from) runs.push({ text: text.slice(from, to), role: "plain" });
  };
  for (let i = 0; i < text.length; i++) {
    const end = formulaEnd(text, i);
    if (end < 0) continue;
    flush(i);
    runs.push({ text: text.slice(i + 2, end - 2).trim(), role: "formula" });
    from = end;
    i = end - 1;
  }
  flush(text.length);
  return runs;
}
