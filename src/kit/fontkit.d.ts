// The little that is used of fontkit, which brings no types.
declare module "fontkit" {
  /** A font that was opened. */
  export interface Font {
    hasGlyphForCodePoint(codePoint: number): boolean;
  }
  /** Opens the bytes of a font; throws if they are none. */
  export function create(bytes: Buffer): Font;
}
