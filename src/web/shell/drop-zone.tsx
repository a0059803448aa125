// A place on which files can be dropped.
import { type DragEvent, type ReactNode, useState } from "react";

interface DropZoneProps {
  readonly label: string;
  readonly take: (files: Iterable<File>) => void;
  readonly children: ReactNode;
}

/** Takes dropped files; what it holds must offer another way in for those who do not drag. */
export function DropZone({ label, take, children }: DropZoneProps) {
  const [over, setOver] = useState(false);
  const drag = (event: DragEvent): void => {
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    take([...event.dataTransfer.files]);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would draw a legend
    <div
      role="group"
      aria-label={label}
      className="drop"
      data-over={over ? "" : undefined}
      onDragOver={drag}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      {children}
    </div>
  );
}
