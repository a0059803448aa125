// Cards of one fact give each other away when they follow one another, so a pile keeps them apart.

/**
 * Reorders `items` so that neighbours never share a group, as long as that is possible at all
 * (no group larger than half the pile, rounded up); otherwise with the fewest such neighbours.
 * Stays as close to the given order as that allows. Cost: n log n for the usual small groups.
 */
export function keepApart<T>(items: readonly T[], groupOf: (item: T) => string): T[] {
  const queues = new Map<string, number[]>();
  items.forEach((item, i) => {
    const queue = queues.get(groupOf(item));
    if (queue) queue.push(i);
    else queues.set(groupOf(item), [i]);
  });
  const sizes = countSizes(queues);
  const taken = new Uint8Array(items.length);
  const result: T[] = [];
  let last: string | undefined;
  let front = 0;
  let largest = Math.max(0, ...sizes.keys());
  while (result.length < items.length) {
    const remaining = items.length - result.length;
    while (largest > 0 && !sizes.get(largest)?.size) largest--;
    while (taken[front]) front++;
    const at = pickNext(largest, remaining) ?? front;
    taken[at] = 1;
    const group = groupOf(items[at] as T);
    shrink(group);
    result.push(items[at] as T);
    last = group;
  }
  return result;

  /** Index of the next item: a group that can wait no longer goes first, else the first of another group. */
  function pickNext(size: number, remaining: number): number | undefined {
    if (size * 2 > remaining) {
      for (const group of sizes.get(size) ?? []) if (group !== last) return queues.get(group)?.[0];
    }
    for (let i = front; i < items.length; i++) {
      if (!taken[i] && groupOf(items[i] as T) !== last) return i;
    }
    return undefined;
  }

  function shrink(group: string): void {
    const queue = queues.get(group) as number[];
    sizes.get(queue.length)?.delete(group);
    queue.shift();
    if (!sizes.has(queue.length)) sizes.set(queue.length, new Set());
    sizes.get(queue.length)?.add(group);
  }
}

function countSizes(queues: ReadonlyMap<string, readonly number[]>): Map<number, Set<string>> {
  const sizes = new Map<number, Set<string>>();
  for (const [group, queue] of queues) {
    const same = sizes.get(queue.length);
    if (same) same.add(group);
    else sizes.set(queue.length, new Set([group]));
  }
  return sizes;
}
