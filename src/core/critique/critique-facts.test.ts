import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyContent, asFact } from "../../../tests/support/any-fact.ts";
import { list, pair, picture, ruleCases, statement } from "../../../tests/support/critique-cases.ts";
import { freshGaps } from "../facts/gaps.ts";
import { critiqueFact } from "./critique-fact.ts";
import { critiqueFacts } from "./critique-facts.ts";

ruleCases(
  "same-prompt",
  [
    [pair("Star of Lyra", "Vega"), pair("Star of Lyra", "Sheliak")],
    [pair("Stern der Leier", "Wega"), pair("stern der  Leier", "Sheliak")],
    [pair("こと座の星", "ベガ"), pair("こと座の星", "シェリアク")],
    [pair("Звезда Лиры", "Вега"), pair("Звезда Лиры", "Шелиак")],
    [pair("Constellation of Vega", "Lyra"), pair("Constellation of Sheliak", "Lyra")],
    [pair("نجم", "Vega"), pair("نجم", "Deneb")],
    [picture("Lyra"), picture("Cygnus")],
    [pair("Star of Lyra?", "Vega"), pair("Star of Lyra", "Sheliak")],
    [statement("[Vega] is in Lyra."), statement("[Sheliak] is in Lyra.")],
    [pair("Swan", "Cygnus"), pair("Swan", "Cygnus and Lyra"), pair("Swan", "Deneb")],
  ],
  [
    [pair("Star of Lyra", "Vega"), pair("Star of Cygnus", "Deneb")],
    [pair("Star of Lyra", "Vega"), pair("Star of Lyra", "vega.")],
    [pair("Sgr A*", "black hole"), pair("Sgr A", "radio source")],
    [pair("こと座の星", "ベガ"), pair("わし座の星", "アルタイル")],
    [
      pair("Constellation of Vega", "Lyra", { angles: ["forward"] }),
      pair("Constellation of Sheliak", "Lyra", { angles: ["forward"] }),
    ],
    [statement("[Vega] and [Sheliak] are in Lyra.")],
    [pair("Звезда Лиры", "Вега"), pair("Звезда Орла", "Альтаир")],
    [picture("Lyra"), pair("Lyra", "Vega", { angles: ["forward"] })].slice(0, 1),
    [list("Planets", ["Mercury", "Venus", "Earth"]), list("Moons", ["Io", "Europa", "Ganymede"])],
    [pair("Star of Lyra", "Vega")],
  ],
);

ruleCases(
  "near-alike",
  [
    [pair("Abbreviation of Lepus", "Lep"), pair("Abbreviation of Lupus", "Lup")],
    [pair("Vela", "Sails"), pair("Vega", "Lyra")],
    [pair("Where is perihelion?", "near the Sun"), pair("Where is parhelion?", "beside the Sun")],
    [pair("Stern der Waage", "Zubenelschemali"), pair("Stern der Wange", "Algenib")],
    [pair("созвездие Лира", "Вега"), pair("созвездие Липа", "дерево")],
    [pair("Constellation of Cassiopeiae", "W"), pair("Constellation of Cassiopeia", "Queen")],
    [pair("étoile du Lion", "Régulus"), pair("étoile du Lien", "Alrescha")],
    [statement("In [Lyra] shines Vega."), statement("In [Puppis] shines Vela.")],
    [pair("アンドロメダ 銀河", "M 31"), pair("アンドロメタ 銀河", "misspelt")],
    [pair("मृगशिरा नक्षत्र", "head of Orion"), pair("मृगशीरा नक्षत्र", "misspelt")],
  ],
  [
    [pair("Abbreviation of Lyra", "Lyr"), pair("Abbreviation of Aquila", "Aql")],
    [pair("Abbreviation of Lepus", "Lep"), pair("Genitive of Lupus", "Lupi")],
    [pair("Messier 31", "Andromeda Galaxy"), pair("Messier 33", "Triangulum Galaxy")],
    [pair("Leo", "Lion"), pair("Lep", "Hare")],
    [pair("Vela", "Sails"), pair("Vega", "sails")],
    [pair("Stern der Leier", "Wega"), pair("Stern der Waage", "Zubeneschamali")],
    [pair("созвездие Лира", "Вега"), pair("созвездие Орёл", "Альтаир")],
    [pair("こと座", "ベガ"), pair("わし座", "アルタイル")],
    [pair("こと座の一番明るい星", "ベガ"), pair("わし座の一番明るい星", "アルタイル")],
    [pair("天琴座最亮的恒星是哪一颗", "织女一"), pair("天鹰座最亮的恒星是哪一颗", "河鼓二")],
    [statement("[Vega] is bright, [Vela] is not.")],
    [pair("Brightest star of Lyra", "Vega"), pair("Faintest star of Lyra", "none")],
  ],
);

describe("the critique", () => {
  const text = fc.oneof(fc.string({ unit: "binary", maxLength: 30 }), fc.string({ unit: "grapheme", maxLength: 60 }));
  const gapped = fc
    .tuple(text, text)
    .map(([a, b]) => `${a.replace(/[[\]\\]/gu, "")}[${b.replace(/[[\]\\]/gu, "") || "x"}]`);
  const content = anyContent(
    { text, filled: text, line: text, statement: gapped, tag: text, picture: "f".repeat(64) },
    freshGaps,
  );
  const facts = fc.array(content, { maxLength: 6 }).map((all) => all.map((one, i) => asFact(one, `${i}`, "sky")));

  it("has something to say about any text, or nothing, but never fails", () => {
    fc.assert(
      fc.property(facts, (some) => {
        for (const note of critiqueFacts(some)) expect(note.message).not.toBe("");
      }),
    );
  });

  it("says the same whatever the order of the facts", () => {
    fc.assert(
      fc.property(facts, (some) => {
        const keys = (all: typeof some) =>
          critiqueFacts(all)
            .map((note) => note.key)
            .sort();
        expect(keys([...some].reverse())).toEqual(keys(some));
      }),
    );
  });

  it("has nothing left to say of a rule once its fix is taken", () => {
    fc.assert(
      fc.property(content, (one) => {
        const fact = asFact(one, "f", "sky");
        for (const { rule, angle, fix } of critiqueFact(fact)) {
          if (!fix) continue;
          const after = asFact(fix.content, "f", "sky");
          const again = critiqueFact({ ...after, angles: fix.angles ?? fact.angles });
          // Text that was damaged in several layers may show another one; every step mends something.
          if (rule === "damaged-text") expect(JSON.stringify(fix.content)).not.toBe(JSON.stringify(one));
          else expect(again.filter((note) => note.rule === rule && note.angle === angle)).toEqual([]);
        }
      }),
    );
  });

  it("leaves out what was waved off, until the words change", () => {
    const asked = pair("Is Vega in Lyra?", "Yes");
    const [note] = critiqueFacts([asked]).filter(({ rule }) => rule === "yes-no");
    const wavedOff = new Set([note?.key ?? ""]);
    const rules = (one: typeof asked) => critiqueFacts([one], { wavedOff }).map(({ rule }) => rule);
    expect(rules(asked)).not.toContain("yes-no");
    expect(rules({ ...asked, note: "It is." })).not.toContain("yes-no");
    expect(rules({ ...asked, prompt: "Is Deneb in Lyra?" } as typeof asked)).toContain("yes-no");
  });
});
