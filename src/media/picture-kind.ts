// Recognises a picture by what is in it; its name says nothing that could be relied on.

/** The pictures that are taken. TIFF and HEIC are not: few people have them, and their readers are a risk. */
export type PictureKind = "png" | "jpeg" | "webp" | "gif" | "avif" | "svg";

/** How far into a file the first element of a drawing is looked for. */
const LOOKED_AT = 8192;

/** The kind of a picture, from its first bytes; null for anything else. */
export function pictureKind(bytes: Uint8Array): PictureKind | null {
  const start = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, LOOKED_AT)).toString("latin1");
  if (start.startsWith("\u0089PNG\r\n\u001a\n")) return "png";
  if (start.startsWith("\u00ff\u00d8\u00ff")) return "jpeg";
  if (start.startsWith("RIFF") && start.slice(8, 12) === "WEBP") return "webp";
  if (start.startsWith("GIF87a") || start.startsWith("GIF89a")) return "gif";
  if (start.slice(4, 8) === "ftyp" && (start.slice(8, 12) === "avif" || start.slice(8, 12) === "avis")) return "avif";
  return looksLikeSvg(start) ? "svg" : null;
}

/** UTF-16 counts too: without its zero bytes and mark it reads like any other text. */
function looksLikeSvg(start: string): boolean {
  const text = start.replaceAll("\u0000", "").replace(/^(?:\u00ef\u00bb\u00bf|\u00ff\u00fe|\u00fe\u00ff)/, "");
  return /^\s*</.test(text) && /<(?:[\w-]+:)?svg[\s>/]/.test(text);
}
