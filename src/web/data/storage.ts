// What this browser keeps for the pages. Storage may be full or forbidden, so nothing here ever throws.

/** A place in the browser that keeps texts under names. */
export interface Shelf {
  /** What is kept under a name; null if nothing is, or nothing may be read. */
  readonly get: (key: string) => string | null;
  /** Keeps a text; false if the browser would not. */
  readonly set: (key: string, text: string) => boolean;
  /** Throws away what is kept under a name. */
  readonly remove: (key: string) => void;
  /** All names that begin with `prefix`, sorted. */
  readonly keys: (prefix: string) => readonly string[];
}

function attempt<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

/** A shelf over one of the browser's storages; even asking for a storage can be forbidden. */
const shelf = (storage: () => Storage): Shelf => ({
  get: (key) => attempt(() => storage().getItem(key), null),
  set: (key, text) =>
    attempt(() => {
      storage().setItem(key, text);
      return true;
    }, false),
  remove: (key) => attempt(() => storage().removeItem(key), undefined),
  keys: (prefix) =>
    attempt(
      () =>
        Object.keys(storage())
          .filter((key) => key.startsWith(prefix))
          .sort(),
      [],
    ),
});

/** Kept for good, shared by all windows. */
export const browserShelf = shelf(() => localStorage);
/** Kept while this window stays open, reloading included. */
export const windowShelf = shelf(() => sessionStorage);
