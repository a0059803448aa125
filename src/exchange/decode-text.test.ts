// Each file below is spelled byte by byte or made by Node's own encoders, which are not the code under test.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeText } from "./decode-text.ts";

const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values);
const utf16 = (text: string, bigEndian = false): Uint8Array => {
  const encoded = Buffer.from(text, "utf16le");
  return bigEndian ? encoded.swap16() : encoded;
};

const NAMES = "Wega,Lyra\r\nBärenhüter,Boötes\r\n";

describe("a byte order mark", () => {
  it("settles UTF-8 and is not part of the text", () => {
    const file = Buffer.from(`\ufeff${NAMES}`, "utf8");
    expect(decodeText(file)).toEqual({ text: NAMES, encoding: "utf-8", replaced: 0 });
  });

  it("settles UTF-16 of either order", () => {
    expect(decodeText(utf16(`\ufeff${NAMES}`))).toEqual({ text: NAMES, encoding: "utf-16le", replaced: 0 });
    expect(decodeText(utf16(`\ufeff${NAMES}`, true))).toEqual({ text: NAMES, encoding: "utf-16be", replaced: 0 });
  });

  it("is left out under another encoding that was asked for", () => {
    expect(decodeText(bytes(0xef, 0xbb, 0xbf, 0xfc), "windows-1252").text).toBe("ü");
  });

  it("alone is an empty text", () => {
    expect(decodeText(bytes(0xff, 0xfe))).toEqual({ text: "", encoding: "utf-16le", replaced: 0 });
  });
});

describe("without a mark", () => {
  it("nothing at all is empty UTF-8", () => {
    expect(decodeText(bytes())).toEqual({ text: "", encoding: "utf-8", replaced: 0 });
  });

  it("valid UTF-8 is UTF-8", () => {
    expect(decodeText(Buffer.from(NAMES, "utf8"))).toEqual({ text: NAMES, encoding: "utf-8", replaced: 0 });
  });

  it("bytes that are no UTF-8 are windows-1252", () => {
    const file = bytes(0x42, 0xe4, 0x72, 0x2c, 0x80, 0x93, 0x94, 0x85);
    expect(decodeText(file)).toEqual({ text: "Bär,€“”…", encoding: "windows-1252", replaced: 0 });
  });

  it("Latin text in UTF-16 is recognised by its zero bytes", () => {
    expect(decodeText(utf16(NAMES))).toMatchObject({ text: NAMES, encoding: "utf-16le" });
    expect(decodeText(utf16(NAMES, true))).toMatchObject({ text: NAMES, encoding: "utf-16be" });
    expect(decodeText(utf16("Vega\tLyra"))).toMatchObject({ text: "Vega\tLyra", encoding: "utf-16le" });
  });

  it("other scripts in UTF-16 are recognised by their line ends", () => {
    const stars = "織女星\t天琴座\r\n牽牛星\t天鷹座\r\nВега\tЛира\r\n".repeat(20);
    expect(decodeText(utf16(stars))).toMatchObject({ text: stars, encoding: "utf-16le" });
    expect(decodeText(utf16(stars, true))).toMatchObject({ text: stars, encoding: "utf-16be" });
  });

  it("a stray zero byte does not make UTF-8 into UTF-16", () => {
    const text = `Vega,Lyra\nDeneb,Cyg\u0000nus\n${"Altair,Aquila\n".repeat(5)}`;
    expect(decodeText(Buffer.from(text))).toMatchObject({ text, encoding: "utf-8" });
  });

  it("UTF-8 that was cut off in a letter is still UTF-8, with one place replaced", () => {
    const file = Buffer.from("Bärenhüter: Boötes, ö", "utf8");
    const cut = decodeText(file.subarray(0, file.length - 1));
    expect(cut).toEqual({ text: "Bärenhüter: Boötes, \ufffd", encoding: "utf-8", replaced: 1 });
  });
});

describe("damage", () => {
  it("counts what was replaced, and not a replacement character that the file holds itself", () => {
    const file = bytes(0xef, 0xbf, 0xbd, 0x41, 0xff);
    expect(decodeText(file, "utf-8")).toEqual({ text: "\ufffdA\ufffd", encoding: "utf-8", replaced: 1 });
    expect(decodeText(Buffer.from("\ufffd"))).toMatchObject({ replaced: 0, encoding: "utf-8" });
  });

  it("turns lone surrogates and half a character of UTF-16 into replacement characters", () => {
    const file = Buffer.concat([utf16("\ufeffA"), bytes(0x00, 0xd8), utf16("B"), bytes(0x43)]);
    expect(decodeText(file)).toEqual({ text: "A\ufffdB\ufffd", encoding: "utf-16le", replaced: 2 });
    const written = Buffer.concat([utf16("\ufffd", true), bytes(0xdc, 0x00)]);
    expect(decodeText(written, "utf-16be")).toMatchObject({ text: "\ufffd\ufffd", replaced: 1 });
  });

  it("gives well-formed text for any bytes under any encoding", () => {
    const encodings = [undefined, "utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), fc.constantFrom(...encodings), (file, forced) => {
        const { text, replaced } = decodeText(file, forced);
        expect(text).not.toMatch(/\p{Cs}/u);
        expect(replaced).toBeGreaterThanOrEqual(0);
        expect(replaced).toBeLessThanOrEqual(text.split("\ufffd").length - 1);
      }),
    );
  });
});

it("text of any kind comes back from UTF-8 and, with a mark, from UTF-16", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 40 }), (text) => {
      const plain = text.replace(/^\ufeff+/, "");
      expect(decodeText(utf16(`\ufeff${plain}`)).text).toBe(plain);
      expect(decodeText(Buffer.from(`\ufeff${plain}`, "utf8")).text).toBe(plain);
    }),
  );
});
