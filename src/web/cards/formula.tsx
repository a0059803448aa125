// A formula in TeX notation as MathML, which screen readers read. What draws it is fetched when the first one comes.
import { useEffect, useRef, useState } from "react";

/** Longest formula that is drawn, and how often macros may unfold in it: more is no formula but an accident, or worse. */
const LIMITS = { characters: 2_000, unfolding: 500, size: 20 } as const;

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
    void draw(alone ? `\\displaystyle ${tex}` : tex).then((math) => {
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

/** MathML for a formula; null if it cannot be read. Nothing in it is taken on trust: no links, no pictures, no classes. */
async function draw(tex: string): Promise<readonly ChildNode[] | null> {
  if (tex.length > LIMITS.characters) return null;
  const sheet = document.createElement("span");
  try {
    const { default: temml } = await import("temml");
    // Elements, not markup: the page takes no styles from markup.
    temml.render(tex, sheet, {
      trust: false,
      strict: false,
      throwOnError: true,
      maxExpand: LIMITS.unfolding,
      maxSize: [LIMITS.size, LIMITS.size],
    });
    return [...sheet.childNodes];
  } catch {
    return null;
  }
}
