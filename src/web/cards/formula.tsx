// A formula in TeX notation as MathML, which screen readers read. What draws it is fetched when the first one comes.
import { useEffect, useRef, useState } from "react";
import { FORMULA_READING, formulaSource, LONGEST_FORMULA } from "../../core/text/formula-limits.ts";

interface FormulaProps {
  readonly tex: string;
  /** Whether nothing stands beside it, so that it has room. */
  readonly alone?: boolean;
}

/** A formula in a line of text; one that cannot be read is shown as it was written, and says so. */
export function Formula({ tex, alone = false }: FormulaProps) {
  const place = useRef<HTMLSpanElement>(null);
  const [drawn, setDrawn] = useState<"not yet" | "yes" | "cannot be">("not yet");
  useEffect(() => {
    let wanted = true;
    void draw(tex, alone).then((math) => {
      if (!wanted) return;
      if (math) place.current?.replaceChildren(...math);
      setDrawn(math ? "yes" : "cannot be");
    });
    return () => {
      wanted = false;
    };
  }, [tex, alone]);
  return (
    <>
      <span ref={place} className="formula" hidden={drawn !== "yes"} />
      {drawn === "yes" ? null : (
        <code className="formula-source">
          {tex}
          {drawn === "cannot be" ? <span className="visually-hidden"> (this formula cannot be drawn)</span> : null}
        </code>
      )}
    </>
  );
}

/** MathML for a formula; null if it cannot be read. */
async function draw(tex: string, alone: boolean): Promise<readonly ChildNode[] | null> {
  if (tex.length > LONGEST_FORMULA) return null;
  const sheet = document.createElement("span");
  try {
    const { default: temml } = await import("temml");
    // Elements, not markup: the page takes no styles from markup.
    temml.render(formulaSource(tex, alone), sheet, FORMULA_READING);
    return [...sheet.childNodes];
  } catch {
    return null;
  }
}
