// Sounds of the demo subject: clicks in the time of a pulsar, as a loudspeaker at a radio telescope gives them.

/** A pulsar and its period in seconds; values of the ATNF Pulsar Catalogue, from memory. */
export interface Pulsar {
  readonly name: string;
  readonly period: number;
  /** What it is, in words. */
  readonly about: string;
}

/** Pulsars whose times an ear can tell apart. */
export const PULSARS: readonly Pulsar[] = [
  {
    name: "PSR B0329+54",
    period: 0.7145,
    about: "one of the brightest pulsars of the northern sky, in Camelopardalis",
  },
  { name: "Vela pulsar", period: 0.0893, about: "left by a supernova some eleven thousand years ago, in Vela" },
  { name: "Crab pulsar", period: 0.0334, about: "left by the supernova of 1054, in Taurus" },
];

/** How the sound is made: samples a second, seconds, and a click's pitch in hertz and fading time in seconds. */
export const CLICKS = { rate: 8_000, seconds: 4, pitch: 1_000, fading: 0.003 } as const;

/** A WAV file (RIFF, PCM, 8 bits, mono) of clicks one period apart, in seconds, the first at once. */
export function pulsarClicks(period: number): Uint8Array<ArrayBuffer> {
  const { rate, seconds, pitch, fading } = CLICKS;
  const samples = Uint8Array.from({ length: rate * seconds }, (_, i) => {
    const since = (i / rate) % period;
    return 128 + Math.round(100 * Math.exp(-since / fading) * Math.cos(2 * Math.PI * pitch * since));
  });
  return riff(samples, rate);
}

function riff(samples: Uint8Array, rate: number): Uint8Array<ArrayBuffer> {
  const header = 44;
  const file = new Uint8Array(header + samples.length);
  const view = new DataView(file.buffer);
  const word = (at: number, text: string): void => file.set(new TextEncoder().encode(text), at);
  word(0, "RIFF");
  view.setUint32(4, header - 8 + samples.length, true);
  word(8, "WAVEfmt ");
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate, true);
  view.setUint16(32, 1, true);
  view.setUint16(34, 8, true);
  word(36, "data");
  view.setUint32(40, samples.length, true);
  file.set(samples, header);
  return file;
}
