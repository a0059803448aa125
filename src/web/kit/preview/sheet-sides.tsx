// Front and back of a sheet, side by side, as close as wanted.
import { type CSSProperties, useEffect, useState } from "react";
import type { KitPreview } from "../../../app/print-views.ts";

interface SheetSidesProps {
  /** Undefined while there is nothing to show. */
  readonly preview: KitPreview | undefined;
  readonly zoom: number;
  /** Whether both sides of a card are on one side of the sheet. */
  readonly fold: boolean;
}

/** The sides in frames that keep their room, whatever is in them. */
export function SheetSides({ preview, zoom, fold }: SheetSidesProps) {
  const sides = fold ? (["front"] as const) : (["front", "back"] as const);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled has to be reached by the keyboard
    <section className="kit-sides" aria-label="The sheet" tabIndex={0} style={{ "--zoom": zoom } as CSSProperties}>
      {sides.map((side, i) => (
        <Side
          key={side}
          name={fold ? "Sheet" : side === "front" ? "Front" : "Back"}
          svg={preview?.sides[i]}
          preview={preview}
        />
      ))}
    </section>
  );
}

function Side(props: {
  readonly name: string;
  readonly svg: string | null | undefined;
  readonly preview: KitPreview | undefined;
}) {
  const { name, svg, preview } = props;
  const url = useSvgUrl(svg ?? null);
  return (
    <figure className="kit-side">
      <div className="kit-frame">
        {url && preview ? (
          <img
            src={url}
            alt={`${name} of sheet ${preview.sheet + 1}`}
            width={preview.size.width}
            height={preview.size.height}
          />
        ) : preview && preview.pages > 0 && svg === null ? (
          <p className="kit-empty">Empty</p>
        ) : null}
      </div>
      <figcaption>{name}</figcaption>
    </figure>
  );
}

/** An address of the picture for as long as it is shown; as a picture, nothing in it can run or be fetched. */
function useSvgUrl(svg: string | null): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const made = svg === null ? null : URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
    setUrl(made);
    return () => {
      if (made) URL.revokeObjectURL(made);
    };
  }, [svg]);
  return url;
}
