// Bytes as characters that a QR code packs densely: RFC 9285, Base45.

const CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

/** Two bytes as three characters, a last single byte as two. */
export function toBase45(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length;
    let value = pair ? (bytes[i] as number) * 256 + (bytes[i + 1] as number) : (bytes[i] as number);
    for (let k = pair ? 3 : 2; k > 0; k--) {
      text += CHARACTERS[value % 45];
      value = Math.floor(value / 45);
    }
  }
  return text;
}

/** The bytes of a Base45 text; null if it is none. */
export function fromBase45(text: string): Uint8Array | null {
  const bytes: number[] = [];
  for (let i = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((character) => CHARACTERS.indexOf(character));
    if (digits.length < 2 || digits.includes(-1)) return null;
    const value = digits.reduceRight((sum, digit) => sum * 45 + digit, 0);
    if (value >= (digits.length === 3 ? 65_536 : 256)) return null;
    if (digits.length === 3) bytes.push(value >> 8);
    bytes.push(value & 255);
  }
  return Uint8Array.from(bytes);
}
