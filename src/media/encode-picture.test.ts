import { describe, expect, it, vi } from "vitest";
import { encodePicture, type Pixels } from "./encode-picture.ts";

// Quick alone; room for a busy machine.
vi.setConfig({ testTimeout: 30_000 });

const LIMITS = { bytes: 4_000_000, seconds: 20 };

/** Pixels from a function of the sample's number; a small generator of noise stands for photographs. */
function pixels(side: number, channels: Pixels["channels"], sample: (i: number) => number): Pixels {
  return {
    data: Buffer.from(Uint8Array.from({ length: side * side * channels }, (_, i) => sample(i))),
    width: side,
    height: side,
    channels,
  };
}

function noise(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state >>> 24;
  };
}

describe("a picture is kept", () => {
  it("as PNG if it is a drawing", async () => {
    const drawing = pixels(600, 3, (i) => (i % 1800 < 900 ? 0 : 255));
    expect(await encodePicture(drawing, true, LIMITS)).toMatchObject({ mime: "image/png", width: 600, height: 600 });
  });

  it("as JPEG if it came as a photograph, or turns out to be one", async () => {
    const flat = pixels(600, 3, () => 120);
    expect((await encodePicture(flat, false, LIMITS)).mime).toBe("image/jpeg");
    expect((await encodePicture(pixels(600, 3, noise()), true, LIMITS)).mime).toBe("image/jpeg");
  });

  it("as JPEG if its alpha channel hides nothing", async () => {
    const random = noise();
    const opaque = pixels(600, 4, (i) => (i % 4 === 3 ? 255 : random()));
    expect((await encodePicture(opaque, true, LIMITS)).mime).toBe("image/jpeg");
  });

  it("as PNG or WebP if something shines through", async () => {
    expect(
      (
        await encodePicture(
          pixels(600, 4, (i) => (i % 4 === 3 ? 100 : 0)),
          false,
          LIMITS,
        )
      ).mime,
    ).toBe("image/png");
    expect((await encodePicture(pixels(600, 4, noise()), true, LIMITS)).mime).toBe("image/webp");
  });

  it("smaller until it fits", async () => {
    const limits = { bytes: 30_000, seconds: 20 };
    const kept = await encodePicture(pixels(600, 3, noise()), false, limits);
    expect(kept.bytes.length).toBeLessThanOrEqual(limits.bytes);
    expect(kept.width).toBeLessThan(600);
    expect(kept.width).toBe(kept.height);
  });
});
