// Cards and pictures for the measurement of printing: true comparisons of named stars, no two cards alike, and made
// photographs of a grainy sky that compress as photographs do.
import sharp from "sharp";
import type { PictureRecord } from "../src/app/ports.ts";
import { type CardSide, EMPTY_SIDE } from "../src/core/cards/cards.ts";
import type { KitCard } from "../src/core/kit/card-faces.ts";
import { hash32 } from "../src/core/random.ts";
import { constellationOf, NAMED_STARS, type NamedStar } from "../src/demo/sky/sky-tables.ts";

/** Size of a made photograph in dots: 300 dots an inch on most of an A7 card. */
const PHOTO = { width: 1000, height: 750 } as const;

/** So many cards, every fifth with a picture of its own on the prompt side; the same every time. */
export function benchCards(count: number): readonly KitCard[] {
  return Array.from({ length: count }, (_, i) => {
    const one = star(i);
    const other = star(i + 1 + Math.floor(i / NAMED_STARS.length));
    const north = one.dec > other.dec ? one : other;
    const asked = `Which lies further north in the sky, ${one.name} or ${other.name}?`;
    const prompt = i % 3 === 0 ? `${describe(one)} ${describe(other)} ${asked}` : asked;
    const picture = i % 5 === 0 ? pictureName(i / 5) : null;
    return {
      number: i + 1,
      prompt: { ...side(prompt), picture },
      answer: side(north.name),
      note: `${degrees(one)}; ${degrees(other)}.`,
      story: "",
      source: i % 2 === 0 ? "Extended Hipparcos Compilation (XHIP)" : "",
      why: "",
      pictureAlt: picture === null ? "" : "A grainy sky",
      pictureSource: "",
      pictureLicence: "",
    };
  });
}

/** Made photographs by the names under which cards call them. */
export async function benchPictures(count: number): Promise<ReadonlyMap<string, PictureRecord>> {
  const pictures = new Map<string, PictureRecord>();
  for (let i = 0; i < count; i++) {
    const bytes = await sharp(grain(i), { raw: { ...PHOTO, channels: 3 } })
      .blur(0.8)
      .jpeg({ quality: 88 })
      .toBuffer();
    const hash = pictureName(i);
    pictures.set(hash, { hash, mime: "image/jpeg", ...PHOTO, bytes: new Uint8Array(bytes) });
  }
  return pictures;
}

const star = (i: number): NamedStar => NAMED_STARS[i % NAMED_STARS.length] as NamedStar;
const side = (text: string): CardSide => ({ ...EMPTY_SIDE, text: [{ text, role: "plain" }] });
const pictureName = (i: number): string => hash32("picture", `${i}`).toString(16).padStart(8, "0");
const signed = (number: number): string => number.toFixed(1).replace("-", "−");
const degrees = ({ name, dec }: NamedStar): string => `${name} at declination ${signed(dec)}°`;

function describe({ name, letter, constellation, magnitude }: NamedStar): string {
  const { name: where, genitive } = constellationOf(constellation);
  return `${name} is ${letter} ${genitive}, a star of magnitude ${signed(magnitude)} in the constellation ${where}.`;
}

/** A sky that grows lighter towards the horizon, with the noise of a sensor. */
function grain(seed: number): Buffer {
  const dots = Buffer.alloc(PHOTO.width * PHOTO.height * 3);
  let state = hash32("grain", `${seed}`);
  for (let i = 0; i < dots.length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const light = 40 + (80 * i) / dots.length;
    dots[i] = light + (state >>> 26);
  }
  return dots;
}
