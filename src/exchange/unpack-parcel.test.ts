import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { isZip, PARCEL_LIMITS, unpackParcel } from "./unpack-parcel.ts";

const LIST = strToU8("prompt,answer\r\nBrightest star of Lyra,Vega\r\n");
const PICTURE = Uint8Array.of(137, 80, 78, 71);

const refusal = (bytes: Uint8Array): string => {
  const parcel = unpackParcel(bytes);
  if (parcel.ok) throw new Error("it was taken");
  return parcel.error;
};

test("a list and its pictures come out, pictures by their bare names, anything else stays inside", () => {
  const zip = zipSync({ "sky/facts.csv": LIST, "sky/pictures/lyra.png": PICTURE, "sky/notes.doc": Uint8Array.of(1) });
  expect(isZip(zip)).toBe(true);
  const parcel = unpackParcel(zip);
  expect(parcel).toMatchObject({ ok: true });
  if (!parcel.ok) return;
  expect(new TextDecoder().decode(parcel.value.list)).toContain("Vega");
  expect([...parcel.value.files]).toEqual([["lyra.png", PICTURE]]);
});

describe("refused", () => {
  test("is a zip without a list, and one with several", () => {
    expect(refusal(zipSync({ "lyra.png": PICTURE }))).toContain("this one holds 0");
    expect(refusal(zipSync({ "a.csv": LIST, "b.csv": LIST }))).toContain("this one holds 2");
  });

  test.each(["../facts.csv", "/etc/facts.csv", "a/../../facts.csv", "C:/facts.csv", "a\\facts.csv"])(
    "is a zip that names %s",
    (name) => {
      expect(refusal(zipSync({ [name]: LIST }))).toContain("outside itself");
    },
  );

  test("is a zip that unpacks to more than the limit, before it is unpacked", () => {
    const large = new Uint8Array(PARCEL_LIMITS.bytes / 4 + 1);
    const zip = zipSync(
      { "a.csv": LIST, "1.png": large, "2.png": large, "3.png": large, "4.png": large },
      { level: 1 },
    );
    // A thousandth of what it unpacks to.
    expect(zip.length).toBeLessThan(PARCEL_LIMITS.bytes / 500);
    expect(refusal(zip)).toContain("more than 256 MB");
  });

  test("is a zip that lies about the size of what it holds", () => {
    const zip = zipSync({ "a.csv": new Uint8Array(1_000_000).fill(65) });
    // The size unpacked stands in the entry's header and again in the directory at the end.
    const view = new DataView(zip.buffer, zip.byteOffset);
    for (let i = 0; i + 4 <= zip.length; i++) if (view.getUint32(i, true) === 1_000_000) view.setUint32(i, 10, true);
    const parcel = unpackParcel(zip);
    // Whatever comes of it, no more is unpacked than was announced.
    expect(parcel.ok ? parcel.value.list.length : 0).toBeLessThanOrEqual(10);
  });

  test("is a zip that was cut off", () => {
    const zip = zipSync({ "a.csv": LIST });
    expect(refusal(zip.subarray(0, zip.length - 30))).toContain("broken");
  });
});
