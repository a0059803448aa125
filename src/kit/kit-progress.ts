// How far the printing of a kit has come.

/** Pictures are made ready one by one; the engine then sets all pages at once, and the file is finished. */
export interface KitProgress {
  readonly step: "pictures" | "setting" | "finishing";
  readonly done: number;
  readonly total: number;
}
