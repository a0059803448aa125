import { expect, it } from "vitest";
import { soundKind } from "./sound-kind.ts";

const bytes = (...parts: (string | number)[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => (typeof part === "number" ? [part] : [...part].map((c) => c.charCodeAt(0)))));

// First bytes as their specifications give them: RFC 3533, RFC 9559, RIFF WAVE, RFC 9639, ISO 14496-12, id3.org, ISO 11172-3.
it.each([
  [bytes("OggS", 0, 2), "audio/ogg"],
  [bytes(0x1a, 0x45, 0xdf, 0xa3), "audio/webm"],
  [bytes("RIFF", 1, 2, 3, 4, "WAVE"), "audio/wav"],
  [bytes("fLaC"), "audio/flac"],
  [bytes(0, 0, 0, 24, "ftypM4A "), "audio/mp4"],
  [bytes("ID3", 4), "audio/mpeg"],
  [bytes(0xff, 0xfb, 0x90), "audio/mpeg"],
])("%s", (some, kind) => expect(soundKind(some)).toBe(kind));

it.each([
  [bytes("<svg>")],
  [bytes("RIFF", 1, 2, 3, 4, "AVI ")],
  [bytes(0xff, 0xd8, 0xff)],
  [bytes("")],
  [bytes("MThd")],
  [bytes(0, 0, 0, 24, "ftypheic")],
  [bytes(0, 0, 0, 24, "ftypavif")],
])("%s is no sound", (some) => expect(soundKind(some)).toBeNull());
