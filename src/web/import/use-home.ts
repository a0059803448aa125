// The subject into which a list goes.
import { useState } from "react";
import { useSubjects } from "../data/queries.ts";

/** Where the facts go: into a subject that exists, or into a new one of this name. */
export interface Home {
  /** The subject that exists; null for a new one. */
  readonly id: string | null;
  /** The subject that was chosen from the list; null while a name is typed. */
  readonly chosen: string | null;
  readonly name: string;
}

/** The home and how to choose another. A typed name that exists already means that subject. */
export function useHome() {
  const subjects = useSubjects().data;
  const [chosen, setChosen] = useState<string | null>(null);
  const [typed, setTyped] = useState<string | null>(null);
  // Nothing has to be settled to begin; a second subject wants a name that tells it from the first.
  const name = typed ?? (subjects?.length === 0 ? "My facts" : "");
  const same = subjects?.find((subject) => subject.name === name.trim());
  const home: Home = { id: chosen ?? same?.id ?? null, chosen, name };
  return { home, choose: { subject: setChosen, name: setTyped } };
}
