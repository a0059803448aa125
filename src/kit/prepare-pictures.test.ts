import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { kitCard as card } from "../../tests/support/kit-plan.ts";
import { DPI, REGISTER, reading, squaresOf } from "../../tests/support/printed-kit.ts";
import type { PictureRecord } from "../app/ports.ts";
import { EMPTY_SIDE } from "../core/cards/cards.ts";

describe("the dots of a picture in print", () => {
  it("are no more than a printer can print, and all of those of a picture that has no more", async () => {
    const photo = (hash: string, width: number): Promise<PictureRecord> =>
      sharp({ create: { width, height: width, channels: 3, background: "#456" } })
        .jpeg()
        .toBuffer()
        .then((bytes) => ({ hash, mime: "image/jpeg", width, height: width, bytes: new Uint8Array(bytes) }));
    const cards = ["fine", "fit"].map((picture, i) => ({
      ...card(i + 1, "", "Vega"),
      prompt: { ...EMPTY_SIDE, picture },
    }));
    const pictures = new Map([
      ["fine", await photo("fine", 2400)],
      ["fit", await photo("fit", 800)],
    ]);
    await reading(
      { cards },
      ({ images }) => {
        // The square has 58 mm: 300 dots an inch are 685 dots, 800 dots are 350 an inch.
        expect(images.map(({ width, packing }) => [width, packing])).toEqual([
          [685, "jpeg"],
          [800, "jpeg"],
        ]);
        expect(images.map(({ dpi }) => dpi)).toEqual([300, 350]);
      },
      pictures,
    );
  });

  it.each(["png", "webp"] as const)("of a %s with holes show the paper through the holes", async (form) => {
    const half = Buffer.from(Array.from({ length: 600 * 600 }, (_, i) => [0, 0, 0, i % 600 < 300 ? 255 : 0]).flat());
    const bytes = await sharp(half, { raw: { width: 600, height: 600, channels: 4 } })
      .toFormat(form)
      .toBuffer();
    const picture = { hash: "half", mime: `image/${form}`, width: 600, height: 600, bytes: new Uint8Array(bytes) };
    const style = { title: "", mark: "none", language: "en" } as const;
    await reading(
      { cards: [{ ...card(1, "", "Vega"), prompt: { ...EMPTY_SIDE, picture: "half" } }], style },
      (pdf) => {
        expect(pdf.images.map(({ packing }) => packing)).toEqual([form === "png" ? "image" : "jpeg"]);
        const [centre] = squaresOf(pdf.draw(1, DPI));
        // The first card is the left upper one: its middle is at 52.5 mm, that of the black half 14.5 mm further left.
        expect(Math.abs((centre?.[0] ?? 0) - (52.5 - 14.5))).toBeLessThan(REGISTER);
      },
      new Map([["half", picture]]),
    );
  });
});
