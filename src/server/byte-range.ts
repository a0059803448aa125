// The one range of bytes that a request asks for (RFC 9110, section 14).

/** First and last byte, both included. */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
}

/** The range, "outside" if none of it is there, null if the whole is to be sent: no range, several, or one that makes no sense. */
export function byteRange(header: string | undefined, length: number): ByteRange | "outside" | null {
  const found = /^bytes=(\d*)-(\d*)$/u.exec(header?.trim() ?? "");
  if (!found) return null;
  const [, first = "", last = ""] = found;
  if (first === "" && last === "") return null;
  if (first === "") {
    const count = Math.min(Number(last), length);
    return count === 0 ? "outside" : { from: length - count, to: length - 1 };
  }
  const from = Number(first);
  const to = last === "" ? length - 1 : Math.min(Number(last), length - 1);
  if (last !== "" && Number(last) < from) return null;
  return from >= length ? "outside" : { from, to };
}
