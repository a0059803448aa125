import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contentProblem } from "../facts/check-content.ts";
import { parseStatement } from "../facts/gaps.ts";
import { listOf, type Proposal, type SentenceProposal, splitText, statementOf } from "./split-text.ts";

const isSentence = (one: Proposal): one is SentenceProposal => one.kind === "statement";
const texts = (text: string): readonly string[] =>
  splitText(text)
    .filter(isSentence)
    .map((one) => one.text);
const blanks = (text: string): readonly string[] =>
  splitText(text)
    .filter(isSentence)
    .flatMap((one) => one.blanks.map(({ from, to, why }) => `${why}: ${text.slice(from, to)}`));

describe("sentences", () => {
  it.each([
    ["Vega is blue. Deneb is far away.", ["Vega is blue.", "Deneb is far away."]],
    [
      "Dr. Marsh saw it at 3.50 a.m. on the hill. It was bright.",
      ["Dr. Marsh saw it at 3.50 a.m. on the hill.", "It was bright."],
    ],
    ["Use a filter, e.g. a red one. Wait.", ["Use a filter, e.g. a red one.", "Wait."]],
    ["J. C. Adams was first. So was Le Verrier.", ["J. C. Adams was first.", "So was Le Verrier."]],
    ["Am 3. März ist Neumond. Man sieht z. B. die Krippe.", ["Am 3. März ist Neumond.", "Man sieht z. B. die Krippe."]],
    ["Was ist das? Ein Stern!", ["Was ist das?", "Ein Stern!"]],
    ["La Luna gira, p. ej., en 27 días. Es gris.", ["La Luna gira, p. ej., en 27 días.", "Es gris."]],
    ["ベガは明るい。デネブは遠い。", ["ベガは明るい。", "デネブは遠い。"]],
    ["织女星很亮。天津四很远！", ["织女星很亮。", "天津四很远！"]],
    ["तारा चमकता है। चाँद नहीं।", ["तारा चमकता है।", "चाँद नहीं।"]],
    ["النسر الواقع لامع. هل تراه؟ نعم.", ["النسر الواقع لامع.", "هل تراه؟", "نعم."]],
    ["כוכב הצפון קרוב לקוטב. הוא אינו הבהיר ביותר.", ["כוכב הצפון קרוב לקוטב.", "הוא אינו הבהיר ביותר."]],
    ["A line that is\nwrapped goes on. Next.", ["A line that is\nwrapped goes on.", "Next."]],
    ["Heading\n\nThen a text.", ["Heading", "Then a text."]],
  ])("of %s", (text, expected) => expect(texts(text)).toEqual(expected));
});

describe("blanks", () => {
  it.each([
    [
      "The planet was discovered by William Herschel on 13 March 1781 in Bath.",
      ["name: William Herschel", "date: 13", "date: March", "date: 1781", "name: Bath"],
    ],
    [
      "The Small Magellanic Cloud is about 200,000 light years away.",
      ["name: Small Magellanic Cloud", "number: 200,000"],
    ],
    ["It has four moons and a diameter of 142,984 km.", ["number: four", "term: diameter", "number: 142,984 km"]],
    ["In May the Moon may be full.", ["date: May", "name: Moon"]],
    ["Der Orionnebel liegt etwa 1.350 Lichtjahre entfernt.", ["term: Orionnebel", "number: 1.350", "term: Lichtjahre"]],
    ["Am 13. März 1781 sah man Uranus.", ["date: 13", "date: März", "date: 1781", "term: Uranus"]],
    ["La estrella Vega está a 25 años luz.", ["term: estrella", "name: Vega", "number: 25"]],
    ["地球から約25光年離れている。", ["term: 地球", "number: 25"]],
    ["ベガはこと座の恒星である。", ["term: ベガ", "term: 恒星"]],
    ["वह 25 प्रकाश वर्ष दूर है।", ["number: 25", "term: प्रकाश"]],
    ["ห่างจากโลก 25 ปีแสง", ["number: 25", "term: ปีแสง"]],
    ["يبعد عنا 25 سنة ضوئية.", ["number: 25", "term: ضوئية"]],
    ["It is so.", []],
  ])("in %s", (text, expected) => expect(blanks(text)).toEqual(expected));
});

describe("lists", () => {
  it.each([
    [
      "Inner planets:\n1. Mercury\n2. Venus\n3. Earth\n4. Mars\n",
      "Inner planets",
      ["Mercury", "Venus", "Earth", "Mars"],
    ],
    ["Planets\n- Mercury\n- Venus\n- Earth", "Planets", ["Mercury", "Venus", "Earth"]],
    ["Vega\nDeneb\nAltair", "", ["Vega", "Deneb", "Altair"]],
    ["Summer Triangle: Vega, Deneb and Altair.", "Summer Triangle", ["Vega", "Deneb", "Altair"]],
    ["Sommerdreieck: Wega, Deneb und Atair", "Sommerdreieck", ["Wega", "Deneb", "Atair"]],
    ["夏の大三角：ベガ、デネブ、アルタイル", "夏の大三角", ["ベガ", "デネブ", "アルタイル"]],
    ["• κόκκινο\n• κίτρινο\n• λευκό", "", ["κόκκινο", "κίτρινο", "λευκό"]],
    ["Distances: 1,200 km, 3,400 km, 9,100 km", "Distances", ["1,200 km", "3,400 km", "9,100 km"]],
  ])("in %s", (text, title, items) => expect(splitText(text)).toMatchObject([{ kind: "list", title, items }]));

  it.each([
    "Vega is blue.\nDeneb is white.\nAltair is white.",
    "Look: Vega and Deneb",
    "Note: the sky was clear. We saw Vega, Deneb, and Altair.",
    "Vega\nDeneb",
  ])("not in %s", (text) => expect(splitText(text).every(isSentence)).toBe(true));

  it("become facts that can be asked", () => {
    const [one] = splitText("Summer Triangle: Vega, Deneb and Altair");
    if (one?.kind !== "list") throw new Error("no list");
    const fact = listOf(one, one.title);
    expect(contentProblem(fact)).toBeNull();
    expect(fact).toMatchObject({ items: ["Vega", "Deneb", "Altair"], numbers: [1, 2, 3] });
  });
});

const unit = fc.constantFrom(
  ..."ab A.?!1,:;-\n•[]\\()éäß山ベは星。、त्र।ดاب ",
  "Vega ",
  "3. ",
  "1. ",
  "z. B. ",
  "👩‍🚀",
  "March ",
);
const anyText = fc.oneof(fc.string({ unit, maxLength: 80 }), fc.string({ unit: "grapheme", maxLength: 60 }));

describe("nothing is invented", () => {
  it("every sentence, blank and item is a stretch of the text, in its order", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        let at = 0;
        for (const one of splitText(text)) {
          expect(one.source.from).toBeGreaterThanOrEqual(at);
          at = one.source.to;
          if (one.kind === "list") {
            for (const item of one.items) expect(text).toContain(item);
            expect(text).toContain(one.title);
            continue;
          }
          expect(one.text).toBe(text.slice(one.source.from, one.source.to));
          let inside = one.source.from;
          for (const { from, to } of one.blanks) {
            expect(from).toBeGreaterThanOrEqual(inside);
            expect(to).toBeGreaterThan(from);
            inside = to;
          }
          expect(inside).toBeLessThanOrEqual(one.source.to);
        }
      }),
    );
  });

  it("no word of a text without a list is lost", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const proposals = splitText(text);
        if (!proposals.every(isSentence)) return;
        const kept = proposals.map((one) => one.text).join("");
        expect(kept.replace(/\s/gu, "")).toBe(text.replace(/\s/gu, ""));
      }),
    );
  });

  it("a statement says what its sentence says, with the ticked stretches as its gaps", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const one of splitText(text).filter(isSentence)) {
          const statement = statementOf(one, one.blanks);
          if (one.blanks.length === 0) expect(statement).toBeNull();
          if (statement?.kind !== "statement") continue;
          const parsed = parseStatement(statement.statement);
          if (!parsed.ok) throw new Error(parsed.error.reason);
          const flat = (all: string): string => all.replace(/\s*\n\s*/gu, " ");
          expect(parsed.value.map((part) => part.text).join("")).toBe(flat(one.text));
          const gaps = parsed.value.filter((part) => part.gap).map((part) => part.text);
          expect(gaps).toEqual(one.blanks.map(({ from, to }) => flat(text.slice(from, to))));
        }
      }),
    );
  });
});
