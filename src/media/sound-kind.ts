// What kind of sound some bytes are, by what they begin with; names and headers are not believed.

/** Largest sound that is stored, in bytes: several minutes as browsers record them. */
export const MAX_SOUND_BYTES = 10 * 1024 * 1024;

const text = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));

/** Brands of the same container that hold pictures. */
const STILL: ReadonlySet<string> = new Set(["heic", "heix", "heim", "heis", "hevc", "mif1", "msf1", "avif", "avis"]);

/** The media type; null if it is no kind of sound that browsers play. */
export function soundKind(bytes: Uint8Array): string | null {
  const start = text(bytes, 0, 4);
  if (start === "OggS") return "audio/ogg";
  if (start === "\u001a\u0045\u00df\u00a3") return "audio/webm";
  if (start === "RIFF" && text(bytes, 8, 12) === "WAVE") return "audio/wav";
  if (start === "fLaC") return "audio/flac";
  if (text(bytes, 4, 8) === "ftyp") return STILL.has(text(bytes, 8, 12)) ? null : "audio/mp4";
  if (start.startsWith("ID3")) return "audio/mpeg";
  // A frame of MPEG audio: eleven bits set, a layer that exists.
  const [first = 0, second = 0] = bytes;
  return first === 0xff && (second & 0xe0) === 0xe0 && (second & 0x06) !== 0 ? "audio/mpeg" : null;
}
