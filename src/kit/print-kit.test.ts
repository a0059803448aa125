import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import { kitCard as card, kitPlan as plan } from "../../tests/support/kit-plan.ts";
import { blackSquare, DOT, DPI, REGISTER, reading, squaresOf } from "../../tests/support/printed-kit.ts";
import { FailureError } from "../app/failure.ts";
import { printedNumber } from "../core/cards/card-number.ts";
import { EMPTY_SIDE } from "../core/cards/cards.ts";
import { KIT_PARTS } from "../core/kit/kit-pages.ts";
import { SHEETS, type Size } from "../core/kit/paper.ts";
import { joinCodes, parseCornerCode } from "../core/kit/sheet-code.ts";
import { cornerPlaces } from "../core/kit/sheet-layout.ts";
import { printKit } from "./print-kit.ts";

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

  it("is heard in the order in which it is read, every text by itself, pictures and codes in their place", async () => {
    const cards = [card(1042, "Brightest star of Lyra", "Vega"), card(318, "Second planet", "Venus")];
    const style = { title: "The night sky", mark: "both", language: "en" } as const;
    await reading({ cards, style }, (pdf) => {
      const heard = [...pdf.structure.matchAll(/^ {2}(P|Figure)\b|"(.*)"/gm)].map(([, kind, text]) => text ?? kind);
      const side = (...texts: string[]) => texts.flatMap((text) => ["P", text]);
      expect(heard.filter((one) => one !== "")).toEqual([
        ...[...side("Brightest star of Lyra", "The night sky", printedNumber(1042)), "Figure"],
        ...[...side("Second planet", "The night sky", printedNumber(318)), "Figure"],
        ...side("Vega", "The night sky", printedNumber(1042)),
        ...side("Venus", "The night sky", printedNumber(318)),
      ]);
    });
  });

  it("prints a mark for characters that no PDF may hold", async () => {
    await reading({ cards: [card(1, "Ve\u0000ga \ufeffand\ufffe Altair", "yes")] }, (pdf) => {
      expect(pdf.pages[0]?.split("\n")[0]?.replace("\u2060", "")).toBe("Ve\ufffdga and\ufffd Altair");
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
