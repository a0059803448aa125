import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import { kitCard as card, kitPlan as plan, cardSize as size } from "../../tests/support/kit-plan.ts";
import { type GreyPage, readPdf } from "../../tests/support/pdf-tools.ts";
import { FailureError } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import { printedNumber } from "../core/cards/card-number.ts";
import { EMPTY_SIDE } from "../core/cards/cards.ts";
import { impose } from "../core/kit/impose.ts";
import { KIT_PARTS, type KitPlan } from "../core/kit/kit-pages.ts";
import { SHEETS, type Size } from "../core/kit/paper.ts";
import { joinCodes, parseCornerCode } from "../core/kit/sheet-code.ts";
import { cornerPlaces } from "../core/kit/sheet-layout.ts";
import { printKit } from "./print-kit.ts";

/** Millimetres by which front and back may differ; cutting by hand is no better. */
const REGISTER = 0.2;
const DPI = 300;
const DOT = 25.4 / DPI;

/** Prints and hands the reading to `look`. */
async function reading<T>(
  more: Partial<KitPlan>,
  look: (pdf: ReturnType<typeof readPdf>, notices: readonly string[]) => T | Promise<T>,
  pictures: ReadonlyMap<string, PictureRecord> = new Map(),
): Promise<T> {
  const kit = await printKit(plan(more), pictures);
  const pdf = readPdf(kit.pdf);
  try {
    return await look(pdf, kit.notices);
  } finally {
    pdf.close();
  }
}

/** A black square, as a picture of the store. */
async function blackSquare(): Promise<PictureRecord> {
  const bytes = await sharp({ create: { width: 600, height: 600, channels: 3, background: "#000" } })
    .png()
    .toBuffer();
  return { hash: "black", mime: "image/png", width: 600, height: 600, bytes: new Uint8Array(bytes) };
}

/** Centres of the black squares of a page in millimetres: black dots that are linked, more than a square of 10 mm. */
function squaresOf({ width, height, dots }: GreyPage): readonly (readonly [number, number])[] {
  const seen = new Uint8Array(width * height);
  const centres: (readonly [number, number])[] = [];
  for (let start = 0; start < dots.length; start++) {
    if (seen[start] || (dots[start] as number) > 127) continue;
    const stack = [start];
    seen[start] = 1;
    let [count, sumX, sumY] = [0, 0, 0];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const x = at % width;
      [count, sumX, sumY] = [count + 1, sumX + x + 0.5, sumY + Math.floor(at / width) + 0.5];
      for (const next of [x > 0 ? at - 1 : -1, x + 1 < width ? at + 1 : -1, at - width, at + width]) {
        if (next < 0 || next >= dots.length || seen[next] || (dots[next] as number) > 127) continue;
        seen[next] = 1;
        stack.push(next);
      }
    }
    if (count * DOT * DOT > 100) centres.push([(sumX / count) * DOT, (sumY / count) * DOT]);
  }
  return centres;
}

describe("front and back on paper", () => {
  const cases = ["a4", "letter", "card"].flatMap((sheet) =>
    ["a7", "a6", "3x5in", "85x55mm"].flatMap((form) =>
      (["long", "short"] as const).map((turn) => [sheet, form, turn] as const),
    ),
  );

  it.each(cases)(
    "of every %s sheet of %s cards lie on each other when it is turned over the %s edge",
    async (paper, form, turn) => {
      const square = await blackSquare();
      const side = { ...EMPTY_SIDE, picture: square.hash };
      const sheet = paper === "card" ? size(form) : (SHEETS[paper] as Size);
      const laid = impose(sheet, size(form), turn);
      const places = laid.ok ? laid.value.fronts.length : 0;
      // All but the second: a pattern that is its own mirror image would lie on itself wherever the backs are.
      const cards = Array.from({ length: places }, (_, i) =>
        i === 1 ? card(2, "Vega", "Lyra") : { ...card(i + 1, "", ""), prompt: side, answer: side },
      );
      const style = { title: "", mark: "none", language: "en" } as const;
      await reading(
        { cards, style, sheet, card: size(form), turn },
        (pdf) => {
          const [front, back] = [pdf.draw(1, DPI), pdf.draw(2, DPI)];
          const fronts = squaresOf(front);
          const backs = squaresOf(back);
          expect(fronts).toHaveLength(places === 1 ? 1 : places - 1);
          expect(backs).toHaveLength(fronts.length);
          const lying = front.width > front.height;
          const [short, long] = [Math.min(sheet.width, sheet.height), Math.max(sheet.width, sheet.height)];
          const [wide, high] = lying ? [long, short] : [short, long];
          for (const [x, y] of fronts) {
            // Turned over an edge that is upright left and right change places, else top and bottom.
            const [u, v] = (turn === "long") !== lying ? [wide - x, y] : [x, high - y];
            const off = Math.min(...backs.map(([a, b]) => Math.hypot(a - u, b - v)));
            expect(off).toBeLessThan(REGISTER);
          }
        },
        new Map([[square.hash, square]]),
      );
    },
  );

  it("are set off by what the calibration says, backs only", async () => {
    const square = await blackSquare();
    const side = { ...EMPTY_SIDE, picture: square.hash };
    const cards = [{ ...card(1, "", ""), prompt: side, answer: side }];
    const style = { title: "", mark: "none", language: "en" } as const;
    const centres = (offset: readonly [number, number]) =>
      reading(
        { cards, style, offset },
        (pdf) => [1, 2].map((n) => squaresOf(pdf.draw(n, DPI))[0]),
        new Map([["black", square]]),
      );
    const [front, back] = await centres([0, 0]);
    const [movedFront, movedBack] = await centres([1.5, -2]);
    expect(movedFront).toEqual(front);
    expect(Math.abs((movedBack?.[0] ?? 0) - (back?.[0] ?? 0) - 1.5)).toBeLessThan(DOT);
    expect(Math.abs((movedBack?.[1] ?? 0) - (back?.[1] ?? 0) + 2)).toBeLessThan(DOT);
  });
});

describe("a picture that fills a side", () => {
  const style = { title: "", mark: "none", language: "en" } as const;
  /** Black in the form of an A7 card. */
  const wide = async (): Promise<PictureRecord> => {
    const bytes = await sharp({ create: { width: 1050, height: 740, channels: 3, background: "#000" } })
      .jpeg()
      .toBuffer();
    return { hash: "black", mime: "image/jpeg", width: 1050, height: 740, bytes: new Uint8Array(bytes) };
  };
  const cards = [{ ...card(1, "Vega", ""), answer: { ...EMPTY_SIDE, picture: "black" } }];
  /** How far the black of a page goes in millimetres: left, top, right, bottom. */
  const reach = ({ width, dots }: GreyPage): readonly number[] => {
    const [xs, ys] = [new Set<number>(), new Set<number>()];
    for (const [at, dot] of dots.entries())
      if (dot < 60) {
        xs.add(at % width);
        ys.add(Math.floor(at / width));
      }
    const [x, y] = [[...xs].sort((a, b) => a - b), [...ys].sort((a, b) => a - b)];
    return [x[0] ?? 0, y[0] ?? 0, (x.at(-1) ?? 0) + 1, (y.at(-1) ?? 0) + 1].map((dot) => dot * DOT);
  };

  it("runs past the cut by as much as it should, on every side", async () => {
    const black = await wide();
    await reading(
      { cards, style, bleed: 2 },
      (pdf) => {
        const laid = impose(SHEETS.a4 as Size, size("a7"), "long", 2);
        const back = laid.ok ? laid.value.backs[0] : undefined;
        const [left = 0, top = 0, right = 0, bottom = 0] = reach(pdf.draw(2, DPI));
        const edges = [left - (back?.x ?? 0), top - (back?.y ?? 0), right - left - 105, bottom - top - 74];
        for (const [i, past] of [-2, -2, 4, 4].entries())
          expect(Math.abs((edges[i] ?? 0) - past)).toBeLessThan(2 * DOT);
      },
      new Map([["black", black]]),
    );
  });

  it("goes to the edge of a page that is one card, which says where it is cut", async () => {
    const black = await wide();
    await reading(
      { cards, style, bleed: 3, sheet: size("a7") },
      (pdf) => {
        const { width, height, dots } = pdf.draw(2, 100);
        // The last row and column of dots lie on the page only in part: 437.008 × 314.961 dots.
        const last = (height - 2) * width;
        for (const at of [0, width - 2, last, last + width - 2]) expect(dots[at]).toBeLessThan(60);
        expect(height / width).toBeCloseTo(80 / 111, 2);
        // 3 mm are 8.504 points; A7 is 297.638 × 209.764 points.
        expect(pdf.info).toMatch(/Page +2 TrimBox: +8\.50 +8\.50 +306\.14 +218\.27/);
        expect(pdf.info).toMatch(/Page +2 BleedBox: +0\.00 +0\.00 +314\.65 +226\.77/);
      },
      new Map([["black", black]]),
    );
  });
});

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

describe("a region of a picture in print", () => {
  it("is covered where it lies in the picture, on the prompt side only", async () => {
    const square = await blackSquare();
    const side = { ...EMPTY_SIDE, picture: square.hash, cover: { x: 0.5, y: 0, width: 0.5, height: 1 } };
    const style = { title: "", mark: "none", language: "en" } as const;
    const [covered, outlined] = await reading(
      { cards: [{ ...card(1, "", ""), prompt: side, answer: side }], style },
      (pdf) => [1, 2].map((n) => squaresOf(pdf.draw(n, DPI))),
      new Map([["black", square]]),
    );
    expect(covered).toHaveLength(1);
    // An A7 card leaves 58 mm of height for the square: the half that is not covered has its middle a quarter further left.
    const [left, right] = [covered?.[0]?.[0] ?? 0, outlined?.[0]?.[0] ?? 0];
    // The second page is the mirrored back; the square is in the middle of its card.
    const middle = (SHEETS.a4 as Size).width - right;
    expect(Math.abs(middle - left - 58 / 4)).toBeLessThan(1);
  });
});

describe("a whole kit", () => {
  it.each(["long", "short", "fold"] as const)(
    "turned %s opens in two readers without a complaint, tagged, its fonts inside",
    async (turn) => {
      const cards = [
        card(1042, "Brightest star of Lyra", "Vega"),
        card(318, "النسر الواقع", "וגה"),
        card(7, "अभिजित्", "織姫星のこと"),
      ];
      await reading(
        { turn, cards, parts: new Set(KIT_PARTS), style: { title: "Sky", mark: "both", language: "en" } },
        (pdf) => {
          expect(pdf.complaints).toBe("");
          expect(pdf.info).toMatch(/^Tagged:\s+yes$/m);
          expect(pdf.fonts.length).toBeGreaterThanOrEqual(5);
          for (const font of pdf.fonts) expect(font).toMatch(/\byes yes yes\b/);
        },
      );
    },
  );

  it.each([
    ["a4", "595.276 x 841.89"],
    ["letter", "612 x 792"],
  ])("on %s has pages of %s points", async (paper, points) => {
    // ISO 216 and 8.5 × 11 in, at 72 points an inch.
    await reading({ cards: [card(1, "Vega", "Lyra")], sheet: SHEETS[paper] as Size }, (pdf) => {
      expect(pdf.info.match(/size:\s+(.*?) pts/g)).toHaveLength(2);
      for (const line of pdf.info.match(/size:\s+(.*?) pts/g) ?? []) expect(line).toContain(points);
    });
  });

  it("has an empty page behind every page that is not a card", async () => {
    await reading(
      {
        cards: [card(1, "Vega", "Lyra")],
        parts: new Set(["cards", "instructions", "dividers", "ruler", "chart", "calendar", "sheet"]),
      },
      (pdf) => {
        expect(pdf.pages.length % 2).toBe(0);
        for (let i = 0; i < pdf.pages.length; i += 2) {
          expect(pdf.pages[i]?.trim()).not.toBe("");
          if (!pdf.pages[i]?.includes("Vega")) expect(pdf.pages[i + 1]?.trim()).toBe("");
        }
      },
    );
  });

  it("gives its text in the order in which it is read", async () => {
    const cards = [
      card(1042, "Brightest star of Lyra", "Vega", "25 light-years away"),
      card(318, "Second planet", "Venus"),
    ];
    await reading({ cards }, (pdf) => {
      const lines = (page: number) => pdf.pages[page]?.trim().split("\n");
      expect(lines(0)).toEqual([
        "Brightest star of Lyra",
        "The night sky",
        printedNumber(1042),
        "Second planet",
        "The night sky",
        printedNumber(318),
      ]);
      expect(lines(1)?.slice(0, 4)).toEqual(["Vega", "25 light-years away", "The night sky", printedNumber(1042)]);
    });
  });

  it("prints what people write as they wrote it, never as markup", async () => {
    const odd = '#panic("x") $x$ *b* @r <l> \\';
    await reading({ cards: [card(1, odd, '#read("/kit.json")')] }, (pdf) => {
      expect(pdf.pages[0]?.split("\n")[0]).toBe(odd);
      expect(pdf.pages[1]?.split("\n")[0]).toBe('#read("/kit.json")');
    });
  });

  it("comes out the same, byte for byte, when it is printed again", async () => {
    const same = plan({ cards: [card(1, "Vega", "Lyra")], parts: new Set(KIT_PARTS) });
    const [a, b] = [await printKit(same, new Map()), await printKit(same, new Map())];
    expect(Buffer.from(a.pdf).equals(Buffer.from(b.pdf))).toBe(true);
  });

  it("tells the print window both sides, the edge and never to scale", async () => {
    const { pdf } = await printKit(plan({ cards: [card(1, "Vega", "Lyra")], turn: "short" }), new Map());
    expect(Buffer.from(pdf).toString("latin1")).toMatch(/\/Duplex \/DuplexFlipShortEdge[\s\S]*\/PrintScaling \/None/);
  });
});

describe("what cannot be printed as it should", () => {
  it("is text that does not fit even in the smallest size: it is named, and what fits is not", async () => {
    const long = "The Milky Way is a barred spiral galaxy. ".repeat(60);
    await reading({ cards: [card(1042, long, "yes"), card(318, "Is Vega a star?", "yes")] }, (_, notices) => {
      expect(notices).toHaveLength(1);
      expect(notices[0]).toContain(`the prompt of card ${printedNumber(1042)}`);
    });
  });

  it("is a word without a break that is wider than the card", async () => {
    await reading({ cards: [card(1042, "x".repeat(200), "yes")] }, (_, notices) => expect(notices).toHaveLength(1));
  });

  it("is a character that no font has: it is named with its card", async () => {
    await reading({ cards: [card(1042, "Vega 👍", "yes")] }, (pdf, notices) => {
      expect(notices).toHaveLength(1);
      expect(notices[0]).toContain("U+1F44D");
      expect(notices[0]).toContain(printedNumber(1042));
      expect(pdf.pages[0]).toContain("Vega \ufffd");
    });
  });

  it("is a picture with too few dots", async () => {
    const small = { ...(await blackSquare()), width: 60, height: 60 };
    const cards = [{ ...card(1042, "Vega", ""), answer: { ...EMPTY_SIDE, picture: "black" } }];
    await reading(
      { cards },
      (_, notices) => expect(notices[0]).toMatch(/\d+ dots an inch/),
      new Map([["black", small]]),
    );
  });

  it("is a card that is larger than the sheet: nothing is printed", async () => {
    await expect(printKit(plan({ card: { width: 400, height: 300 } }), new Map())).rejects.toThrow(FailureError);
  });
});

describe("the codes of a page", () => {
  beforeAll(() => {
    const file = createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm");
    const wasmBinary = new Uint8Array(readFileSync(file)).buffer;
    return void prepareZXingModule({ overrides: { wasmBinary } });
  });

  it("are read back by another program, one for every card", async () => {
    const cards = Array.from({ length: 8 }, (_, i) => card(1042 + 137 * i, "Vega", "Lyra"));
    await reading({ cards, style: { title: "Sky", mark: "code", language: "en" } }, async (pdf) => {
      const { width, height, dots } = pdf.draw(1, 150);
      const png = await sharp(dots, { raw: { width, height, channels: 1 } })
        .png()
        .toBuffer();
      const codes = await readBarcodes(new Uint8Array(png), { formats: ["QRCode"], maxNumberOfSymbols: 20 });
      expect(codes.map((code) => code.text).sort()).toEqual(cards.map(({ number }) => printedNumber(number)).sort());
    });
  });

  it("of a sitting sheet stand where its layout says, and give back its numbers", async () => {
    const { sitting, sheet } = plan({});
    await reading({ parts: new Set(["sheet"]) }, async (pdf) => {
      const { width, height, dots } = pdf.draw(1, DPI);
      const png = await sharp(dots, { raw: { width, height, channels: 1 } })
        .png()
        .toBuffer();
      const codes = await readBarcodes(new Uint8Array(png), { formats: ["QRCode"], maxNumberOfSymbols: 20 });
      const parsed = codes.flatMap(({ text, position }) => {
        const code = parseCornerCode(text);
        return code.ok ? [{ ...code.value, at: position.topLeft }] : [];
      });
      expect(joinCodes(parsed)).toEqual(sitting.piles.map((pile) => pile.numbers));
      for (const { corner, at } of parsed) {
        const [x, y] = cornerPlaces(sheet)[corner] as readonly [number, number];
        expect(Math.abs((at.x + 0.5) * DOT - x)).toBeLessThan(REGISTER);
        expect(Math.abs((at.y + 0.5) * DOT - y)).toBeLessThan(REGISTER);
      }
    });
  });
});

describe("scripts that are shaped", () => {
  it.each(["अभिजित्", "ध्रुव तारा", "织女星", "すばる", "שבתאי"])(
    "“%s” is found again in the text of the page",
    async (name) => {
      await reading({ cards: [card(1, name, "Vega")] }, (pdf, notices) => {
        expect(notices).toEqual([]);
        // Readers put marks of direction round text from right to left.
        expect(pdf.pages[0]?.replace(/[\u202a-\u202e]/g, "").split("\n")[0]).toBe(name);
      });
    },
  );
});
