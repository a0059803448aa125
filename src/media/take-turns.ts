// Lets only so many pieces of work run at once, the others waiting in order: large pictures need much memory.

/** Gives a function that runs work as soon as fewer than `places` pieces are running. */
export function createTurns(places: number): <T>(work: () => Promise<T>) => Promise<T> {
  const waiting: (() => void)[] = [];
  let free = places;
  return async (work) => {
    if (free > 0) free--;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      return await work();
    } finally {
      // A place is handed on directly, so that nobody who comes later can slip in between.
      const next = waiting.shift();
      if (next) next();
      else free++;
    }
  };
}
