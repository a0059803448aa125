// The little that is used of fontkit, which brings no types.
declare module "fontkit" {
  /** A font that was opened. */
  export interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): { readonly advanceWidth: number };
  }
  /** Opens the bytes of a font; throws if they are none. */
  export function create(bytes: Buffer): Font;
}
