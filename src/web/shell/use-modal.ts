// A dialog that holds the focus while it is open, and gives it back.
import { type RefObject, useEffect, useRef } from "react";
import { focusOn } from "./focus-rescue.ts";

/** Opens the dialog it is given to; when it goes, the focus returns to where it was. */
export function useModal(): RefObject<HTMLDialogElement | null> {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    return () => {
      const back = before instanceof HTMLElement && before.isConnected ? before : document.querySelector("h1");
      // The dialog is taken from the page first.
      requestAnimationFrame(() => {
        if (document.activeElement === document.body) focusOn(back);
      });
    };
  }, []);
  return dialog;
}
