// The list that is being brought, as it lies in this window: put away, it can be taken up again.
import { useState } from "react";
import { windowShelf } from "../data/storage.ts";

const KEY = "longhold.list";

/** A list and what belongs to it; a file takes the place of the text. */
export interface ListDraft {
  readonly text: string;
  readonly file: File | null;
  readonly pictures: readonly File[];
  readonly sounds: readonly File[];
}

const EMPTY: ListDraft = { text: "", file: null, pictures: [], sounds: [] };

/** The draft and how to change it; pasted text survives reloading, files cannot. */
export function useListDraft() {
  const [list, setList] = useState<ListDraft>(() => ({ ...EMPTY, text: windowShelf.get(KEY) ?? "" }));
  const change = (part: Partial<ListDraft>): void => {
    setList((all) => ({ ...all, ...part }));
    if (part.text) windowShelf.set(KEY, part.text);
    else if (part.text === "") windowShelf.remove(KEY);
  };
  return { list, change, clear: () => change(EMPTY) };
}
