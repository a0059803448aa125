// Identities that sort by time: UUID version 7, RFC 9562 section 5.7.

/** A UUIDv7 in its usual text form; text order is time order. */
export type EntryId = string;

const RANDOM_BITS = 74n;
const RANDOM_MASK = (1n << RANDOM_BITS) - 1n;

/** The last instant that 48 bits can count, in the year 10889. */
const LAST_INSTANT = (1n << 48n) - 1n;

/**
 * A new identity for the instant `now` (milliseconds since 1970) from ten random bytes. If `after` is
 * given, the result sorts behind it even where the clock stood still or ran back (RFC 9562 section 6.2,
 * method 2: the random part counts up).
 */
export function createEntryId(now: number, random: Uint8Array, after?: EntryId): EntryId {
  let time = BigInt(Math.max(0, Math.floor(now)));
  let tail = random.slice(0, 10).reduce((all, byte) => (all << 8n) | BigInt(byte), 0n) & RANDOM_MASK;
  if (after) {
    const previous = parse(after);
    if (previous.time >= time) {
      time = previous.time;
      tail = previous.tail + 1n + (tail >> 42n);
      if (tail > RANDOM_MASK) {
        time += 1n;
        tail &= RANDOM_MASK;
      }
    }
  }
  if (time > LAST_INSTANT) throw new RangeError("the identities have come to the end of their time");
  return format(time, tail);
}

/** Whether a text is a UUIDv7 in lower case. */
export const isEntryId = (text: string): boolean =>
  /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(text);

/** The instant in an identity, milliseconds since 1970. */
export const entryTime = (id: EntryId): number => Number(parse(id).time);

function format(time: bigint, tail: bigint): EntryId {
  const high = tail >> 62n;
  const low = tail & ((1n << 62n) - 1n);
  const value = (time << 80n) | (7n << 76n) | (high << 64n) | (2n << 62n) | low;
  const hex = value.toString(16).padStart(32, "0");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

function parse(id: EntryId): { time: bigint; tail: bigint } {
  const value = BigInt(`0x${id.replaceAll("-", "")}`);
  const high = (value >> 64n) & 0xfffn;
  return { time: value >> 80n, tail: (high << 62n) | (value & ((1n << 62n) - 1n)) };
}
