// All pictures are made here, with sharp or byte by byte.
import { createHash } from "node:crypto";
import { crc32, deflateSync } from "node:zlib";
import sharp from "sharp";
import { describe, expect, it, vi } from "vitest";
import { normalisePicture, PICTURE_LIMITS } from "./normalise-picture.ts";

// Some of these decode tens of millions of pixels, perhaps beside other tests.
vi.setConfig({ testTimeout: 30_000 });

const forms = ["png", "jpeg", "webp", "gif", "avif"] as const;

async function kept(bytes: Uint8Array) {
  const result = await normalisePicture(bytes);
  if (!result.ok) throw new Error(result.error);
  return result.value;
}

async function refusal(bytes: Uint8Array): Promise<string> {
  const result = await normalisePicture(bytes);
  return result.ok ? "it was kept" : result.error;
}

/** A photograph as far as a computer can tell. */
const photograph = (width: number, height: number) =>
  sharp({
    create: { width, height, channels: 3, background: "#222", noise: { type: "gaussian", mean: 90, sigma: 40 } },
  });

/** Dark sky with a red corner at the top left. */
const redCorner = (width: number, height: number) => {
  const corner = { create: { width: width / 2, height: height / 2, channels: 3, background: "#f00" } } as const;
  return sharp({ create: { width, height, channels: 3, background: "#004" } }).composite([
    { input: corner, left: 0, top: 0 },
  ]);
};

async function pixelAt(bytes: Uint8Array, left: number, top: number): Promise<readonly number[]> {
  return [...(await sharp(bytes).extract({ left, top, width: 1, height: 1 }).raw().toBuffer())];
}

/** A grey PNG that claims a size; all its samples are 0, of which only `rows` rows are really there. */
function png(width: number, height: number, rows = height): Buffer {
  const number = (n: number): Buffer => Buffer.from([n >>> 24, n >>> 16, n >>> 8, n]);
  const chunk = (type: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
    return Buffer.concat([number(data.length), body, number(crc32(body))]);
  };
  const header = Buffer.concat([number(width), number(height), Buffer.from([8, 0, 0, 0, 0])]);
  const data = deflateSync(Buffer.alloc((width + 1) * rows), { level: 9 });
  return Buffer.concat([
    Buffer.from("\u0089PNG\r\n\u001a\n", "latin1"),
    chunk("IHDR", header),
    chunk("IDAT", data),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const XMLNS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
const svg = (inside: string): Buffer => Buffer.from(`<svg ${XMLNS} viewBox="0 0 20 10">${inside}</svg>`);

describe("a picture is taken", () => {
  it.each(forms)("as %s, whatever its name", async (form) => {
    const picture = await kept(await redCorner(64, 48).toFormat(form).toBuffer());
    expect(picture).toMatchObject({ width: 64, height: 48 });
    const [red = 0, , blue = 255] = await pixelAt(picture.bytes, 8, 8);
    expect(red).toBeGreaterThan(220);
    expect(blue).toBeLessThan(40);
  });

  it("under the SHA-256 of what is kept, in the form that it says", async () => {
    const picture = await kept(await photograph(80, 60).jpeg().toBuffer());
    expect(picture.hash).toBe(createHash("sha256").update(picture.bytes).digest("hex"));
    expect(picture.mime).toBe("image/jpeg");
    expect(await sharp(picture.bytes).metadata()).toMatchObject({ format: "jpeg", width: 80, height: 60 });
  });

  it("with the same result each time, also many at once", async () => {
    const inputs = await Promise.all([
      photograph(300, 200).jpeg().toBuffer(),
      redCorner(300, 200).png().toBuffer(),
      svg('<circle cx="5" cy="5" r="4"/>'),
    ]);
    const once = await Promise.all(inputs.map(async (bytes) => (await kept(bytes)).hash));
    const many = await Promise.all([...inputs, ...inputs, ...inputs].map(async (bytes) => (await kept(bytes)).hash));
    expect(many).toEqual([...once, ...once, ...once]);
    expect(new Set(once).size).toBe(3);
  });

  it("as the first frame of several", async () => {
    const frames = Buffer.concat([Buffer.alloc(20 * 20 * 3, 255), Buffer.alloc(20 * 20 * 3, 0)]);
    const gif = await sharp(frames, { raw: { width: 20, height: 40, channels: 3, pageHeight: 20 } })
      .gif({ delay: [100, 100] })
      .toBuffer();
    expect((await sharp(gif).metadata()).pages).toBe(2);
    const picture = await kept(gif);
    expect(picture).toMatchObject({ width: 20, height: 20, mime: "image/png" });
    expect((await pixelAt(picture.bytes, 10, 10))[0]).toBe(255);
  });

  it("no larger than needed", async () => {
    const picture = await kept(await photograph(3000, 1500).jpeg({ quality: 70 }).toBuffer());
    expect(picture).toMatchObject({ width: 2400, height: 1200 });
    expect(picture.bytes.length).toBeLessThanOrEqual(PICTURE_LIMITS.storedBytes);
  });

  it("with deep or grey samples, and with transparent parts", async () => {
    expect(await kept(await redCorner(40, 40).toColourspace("rgb16").png().toBuffer())).toMatchObject({
      mime: "image/png",
    });
    expect(await kept(await redCorner(40, 40).greyscale().jpeg().toBuffer())).toMatchObject({ mime: "image/jpeg" });
    const glass = {
      create: { width: 40, height: 40, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0.5 } },
    } as const;
    const picture = await kept(await sharp(glass).webp().toBuffer());
    expect((await pixelAt(picture.bytes, 1, 1))[3]).toBeGreaterThan(120);
    expect((await pixelAt(picture.bytes, 1, 1))[3]).toBeLessThan(135);
  });
});

describe("what a picture says about its maker", () => {
  it("is taken out: place, time, camera, colour profile, remarks", async () => {
    const exif = {
      IFD0: { Copyright: "A. Guide", ImageDescription: "hilltop" },
      IFD3: { GPSLatitudeRef: "N", GPSLatitude: "46/1 30/1 0/1", GPSLongitudeRef: "E", GPSLongitude: "9/1 30/1 0/1" },
    };
    const photo = await photograph(60, 40)
      .withExif(exif)
      .withIccProfile("p3")
      .withXmp("<x:xmpmeta xmlns:x='adobe:ns:meta/'/>")
      .jpeg()
      .toBuffer();
    const before = await sharp(photo).metadata();
    expect(before.exif?.toString("latin1")).toContain("hilltop");
    expect([before.icc, before.xmp].every((part) => part !== undefined)).toBe(true);
    const { bytes } = await kept(photo);
    const after = await sharp(bytes).metadata();
    expect([after.exif, after.icc, after.xmp, after.iptc, after.comments]).toEqual(Array(5).fill(undefined));
    expect(Buffer.from(bytes).toString("latin1")).not.toMatch(/hilltop|Guide|Exif|ICC_PROFILE/);
  });

  it("is followed where it says which way is up", async () => {
    // Orientation 6: the camera was held upright, and the picture has to be turned clockwise by a quarter.
    const photo = await redCorner(40, 20).jpeg().withMetadata({ orientation: 6 }).toBuffer();
    const picture = await kept(photo);
    expect(picture).toMatchObject({ width: 20, height: 40 });
    expect((await pixelAt(picture.bytes, 15, 5))[0]).toBeGreaterThan(200);
    expect((await pixelAt(picture.bytes, 5, 35))[0]).toBeLessThan(60);
    expect((await sharp(picture.bytes).metadata()).orientation).toBeUndefined();
  });
});

describe("a picture is refused", () => {
  it("that is larger than memory, by what its first bytes claim", async () => {
    const start = performance.now();
    expect(await refusal(png(60_000, 60_000, 1))).toMatch(/60000 × 60000 pixels, and at most 50 million/);
    expect(performance.now() - start).toBeLessThan(2_000);
  });

  it("that is small on disk and huge when unpacked", async () => {
    const bomb = png(8_000, 8_000);
    expect(bomb.length).toBeLessThan(100_000);
    expect(await refusal(bomb)).toMatch(/8000 × 8000 pixels/);
    expect(await kept(png(7_000, 7_000))).toMatchObject({ width: 2400, height: 2400 });
  });

  it("with too many bytes, before they are looked at", async () => {
    const large = Buffer.alloc(PICTURE_LIMITS.inputBytes + 1);
    png(1, 1).copy(large);
    expect(await refusal(large)).toMatch(/has 25\.0 MB, and at most 25\.0 MB/);
    expect(await refusal(Buffer.concat([svg(""), Buffer.alloc(PICTURE_LIMITS.svgBytes, " ")]))).toMatch(
      /drawing has 2\.0 MB/,
    );
  });

  it("that is empty, or no picture", async () => {
    expect(await refusal(new Uint8Array())).toMatch(/empty/);
    expect(await refusal(Buffer.from("Vega,Lyra\n"))).toMatch(/not a picture/);
    expect(await refusal(Buffer.from("II*\u0000\u0008\u0000\u0000\u0000", "latin1"))).toMatch(/save it as PNG/);
  });

  it("that only begins like one", async () => {
    const heads = [
      "\u0089PNG\r\n\u001a\nVega is in Lyra",
      "\u00ff\u00d8\u00ff Vega",
      "GIF89a",
      "RIFF\u0004\u0000\u0000\u0000WEBPVega",
    ];
    for (const head of heads) expect(await refusal(Buffer.from(head, "latin1"))).toMatch(/damaged or cut off/);
  });

  it.each(forms)("that is a %s cut off in the middle", async (form) => {
    const whole = await photograph(200, 150).toFormat(form).toBuffer();
    expect(await refusal(whole.subarray(0, Math.floor(whole.length / 2)))).toMatch(/damaged or cut off/);
  });
});

describe("a drawing", () => {
  it("is drawn as PNG, large enough to be read", async () => {
    const picture = await kept(svg('<rect width="10" height="10" fill="#f00"/>'));
    expect(picture).toMatchObject({ mime: "image/png", width: 1200, height: 600 });
    expect(await pixelAt(picture.bytes, 300, 300)).toEqual([255, 0, 0, 255]);
    expect((await pixelAt(picture.bytes, 900, 300))[3]).toBe(0);
  });

  it("is drawn with the bitmaps inside it", async () => {
    const dot = (await redCorner(10, 10).png().toBuffer()).toString("base64");
    const picture = await kept(svg(`<image width="10" height="10" href="data:image/png;base64,${dot}"/>`));
    expect((await pixelAt(picture.bytes, 150, 150))[0]).toBe(255);
  });

  const hostile: readonly (readonly [string, string, RegExp])[] = [
    ["a script", svg("<script>alert(1)</script>").toString(), /active content/],
    ["an event handler", svg('<rect onload="alert(1)"/>').toString(), /active content/],
    ["a file beside it", svg('<image href="file:///secret.png"/>').toString(), /outside itself/],
    [
      "an entity that reads a file",
      `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///secret">]>${svg("<text>&x;</text>")}`,
      /entities/,
    ],
    [
      "entities that grow without end",
      `<!DOCTYPE svg [<!ENTITY a "a"><!ENTITY b "&a;&a;">]>${svg("<text>&b;</text>")}`,
      /entities/,
    ],
    ["markup that ends too soon", svg("<g>").toString().slice(0, -10), /damaged|cannot be/],
  ];
  it.each(hostile)("with %s is refused", async (_, text, reason) => {
    expect(await refusal(Buffer.from(text))).toMatch(reason);
  });

  it("with a huge or broken bitmap inside is refused", async () => {
    const image = (bytes: Buffer): Buffer => svg(`<image href="data:image/png;base64,${bytes.toString("base64")}"/>`);
    expect(await refusal(image(png(60_000, 60_000, 1)))).toMatch(/inside the drawing: the picture is 60000 × 60000/);
    expect(await refusal(image(Buffer.from("Vega")))).toMatch(/inside the drawing: .*damaged/);
  });

  it("that repeats itself without end is refused in good time", async () => {
    const groups = Array.from(
      { length: 30 },
      (_, i) => `<g id="g${i + 1}">${`<use xlink:href="#g${i}"/>`.repeat(4)}</g>`,
    );
    const start = performance.now();
    expect(await refusal(svg(`<defs><rect id="g0"/>${groups.join("")}</defs><use xlink:href="#g30"/>`))).toMatch(
      /cannot be drawn|too long/,
    );
    expect(performance.now() - start).toBeLessThan((PICTURE_LIMITS.svgSeconds + 5) * 1000);
  });
});
