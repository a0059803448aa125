// Damaged lists and pictures by number: the same number always gives the same file.
import type { ImportChoices } from "../../src/app/views.ts";
import { uniform } from "../../src/core/random.ts";

/** A source of choices that depends on the number of the file only. */
function createDice(file: string) {
  let rolls = 0;
  const below = (n: number): number => Math.floor(uniform(file, String(rolls++)) * n);
  return { below, pick: <T>(items: readonly T[]): T => items[below(items.length)] as T };
}
type Dice = ReturnType<typeof createDice>;

const SKY = [
  ["Vega", "Lyra"],
  ["Deneb", "Cygnus"],
  ["Arktur, α", "Boötes"],
  ["Спика", "Virgo"],
  ["織女星", "Vega"],
  ['the "Plough"', "Ursa Major"],
  ["Sirius; −1,46", "Canis Major"],
] as const;

const CELLS = [
  "<script>alert('sky')</script>",
  '<img src=x onerror="alert(1)">',
  "&lt;b&gt;",
  "=1+1",
  "[Vega] is in [Lyra]",
  "[Vega is in Lyra",
  "a ] b",
  "[]",
  "../../moon.png",
  "https://hilltop.example/moon.png",
  "moon.png",
  "gone.png",
  "a".repeat(5_001),
  "\u202eVega",
  "Boo\u0308tes",
  "\ufeffVega",
  "",
];

const DAMAGES: readonly ((text: string, dice: Dice) => string)[] = [
  (text, dice) => text.slice(0, dice.below(text.length + 1)),
  (text, dice) => insert(text, '"', dice),
  (text, dice) => insert(text, dice.pick(['""', '"\n', ',"', '","', '"x']), dice),
  (text, dice) => insert(text, dice.pick(["\u0000", "\u0007", "\u001b[2J", "\u0085", "\v", "\u007f"]), dice),
  (text, dice) => insert(text, dice.pick(["\r", "\r\n", "\n\n", "\n\r"]), dice),
  (text, dice) => insert(text, dice.pick([",", "\t", ";"]), dice),
  (text, dice) => insert(text, dice.pick(["\ud800", "\udc00"]), dice),
  (text, dice) => (dice.below(4) === 0 ? insert(text, "x".repeat(20_001), dice) : insert(text, "\t", dice)),
  (text, dice) => text.replaceAll("\n", dice.pick(["\r\n", "\r", "\n"])),
  (text, dice) => insert(text, dice.pick(CELLS), dice),
];

function insert(text: string, what: string, dice: Dice): string {
  const at = dice.below(text.length + 1);
  return text.slice(0, at) + what + text.slice(at);
}

function writeRow(dice: Dice, delimiter: string): string {
  const sky = dice.pick(SKY);
  const cells = [
    dice.below(9) ? `${sky[0]} ${dice.below(20)}` : dice.pick(CELLS),
    dice.below(9) ? sky[1] : dice.pick(CELLS),
  ];
  while (dice.below(6) === 0) cells.push(dice.pick(CELLS));
  // Now and then a row is not quoted although it should be.
  const quoted = cells.map((cell) =>
    dice.below(10) && /[",;\t\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell,
  );
  return quoted.join(delimiter);
}

const ENCODERS: readonly ((text: string) => Buffer)[] = [
  (text) => Buffer.from(text, "utf8"),
  (text) => Buffer.from(text, "utf8"),
  (text) => Buffer.from(`\ufeff${text}`, "utf8"),
  (text) => Buffer.from(text, "latin1"),
  (text) => Buffer.from(text, "utf16le"),
  (text) => Buffer.from(`\ufeff${text}`, "utf16le"),
  (text) => Buffer.from(`\ufeff${text}`, "utf16le").swap16(),
];

/** List number `n`, and the choices with which it is to be read. */
export function damagedList(n: number): { bytes: Uint8Array; choices: ImportChoices } {
  const dice = createDice(`list ${n}`);
  const delimiter = dice.pick([",", "\t", ";"]);
  const header = dice.pick(["", "", `prompt${delimiter}answer${delimiter}picture\n`, `Frage${delimiter}Antwort\n`]);
  let text = header + Array.from({ length: 1 + dice.below(20) }, () => `${writeRow(dice, delimiter)}\n`).join("");
  for (let i = dice.below(4); i >= 0; i--) text = dice.pick(DAMAGES)(text, dice);
  const bytes = dice.pick(ENCODERS)(text);
  for (let i = dice.below(6) - 3; i > 0 && bytes.length > 0; i--) bytes[dice.below(bytes.length)] = dice.below(256);
  return {
    bytes: bytes.subarray(0, bytes.length - (dice.below(6) === 0 ? 1 : 0)),
    choices: dice.below(4) ? {} : someChoices(dice),
  };
}

/** Choices that mostly do not fit the list at all. */
const someChoices = (dice: Dice): ImportChoices => ({
  encoding: dice.pick([undefined, undefined, undefined, "utf-8", "utf-16le", "utf-16be", "windows-1252"]),
  delimiter: dice.pick([undefined, undefined, undefined, ",", "\t", ";"]),
  header: dice.pick([undefined, undefined, true, false]),
  columns: dice.pick([
    undefined,
    undefined,
    undefined,
    ["answer", "prompt"],
    ["statement", null, "note"],
    ["picture", "answer", "tags"],
    [],
  ]),
});

const SVG_PARTS = [
  "<script>alert(1)</script>",
  '<rect onclick="alert(1)" width="5" height="5"/>',
  '<image href="file:///secret.png"/>',
  '<image href="data:image/png;base64,AAAA"/>',
  "<!DOCTYPE svg [<!ENTITY a 'a'>]>",
  "<style>@import 'a.css';</style>",
  '<circle cx="9" cy="9" r="4"/>',
  "</g>",
  "&nbsp;",
];

/** Sizes claimed by a PNG's header, far from the truth. */
function claimSize(png: Buffer, dice: Dice): Buffer {
  const bytes = Buffer.from(png);
  bytes.writeUInt32BE(dice.pick([0, 1, 60_000, 0x7fffffff]), 16);
  bytes.writeUInt32BE(dice.pick([1, 60_000, 0xffffffff]), 20);
  return bytes;
}

/** Picture number `n`, made from undamaged ones (`whole`, of which the first is a PNG) or from parts of drawings. */
export function damagedPicture(n: number, whole: readonly Buffer[]): Uint8Array {
  const dice = createDice(`picture ${n}`);
  if (n % 4 === 0) {
    const parts = Array.from({ length: 1 + dice.below(3) }, () => dice.pick(SVG_PARTS));
    return Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 20">${parts.join("")}</svg>`.slice(
        dice.below(30) ? 0 : 1,
      ),
    );
  }
  const bytes = Buffer.from(dice.pick(whole));
  const flip = (count: number): Buffer => {
    for (let i = 0; i < count; i++) bytes[dice.below(bytes.length)] = dice.below(256);
    return bytes;
  };
  const damages = [
    () => bytes.subarray(0, dice.below(bytes.length)),
    () => flip(1),
    () => flip(30),
    () => bytes.fill(0, dice.below(bytes.length)),
    () => claimSize(whole[0] as Buffer, dice),
    () => Buffer.concat([bytes.subarray(0, 12), dice.pick(whole).subarray(12)]),
    () => Buffer.concat([Buffer.from("moon.png\n"), bytes]),
  ];
  return dice.pick(damages)();
}
