// Subjects, facts, cards and pictures.

import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { factRecord } from "../../src/app/fact-record.ts";
import type { FactRecord, PictureRecord, Store } from "../../src/app/ports.ts";
import type { Fact } from "../../src/core/facts/fact.ts";
import { EXACT_SPELLING } from "../../src/core/facts/fact.ts";
import { foldText } from "../../src/core/text/fold-text.ts";
import { anyContent, asFact } from "../support/any-fact.ts";
import { BARE, PLEIADES, storedPair } from "../support/night-sky.ts";
import type { NewDatabase, StoreDatabase } from "../support/store-database.ts";

/** Texts that a careless store would change: JSON, quotes, wild cards, other scripts, marks, white space. */
const WILD = [
  "[3]",
  '{"a":1}',
  "null",
  '"Vega"',
  "'; drop table fact; --",
  "100 % _ ! \\ / ~",
  " kept spaces \t and\r\nlines\n",
  "🔭👩‍🚀🇵🇹",
  "نجم القطب Polaris الشمالي",
  "כוכב הצפון \u200f(α)\u200e",
  "e\u0301 is not é",
  "İstanbul ẞ ﬁ",
  "織姫星",
  "",
] as const;

const PHOTO: PictureRecord = {
  hash: "a".repeat(64),
  mime: "image/webp",
  width: 640,
  height: 480,
  bytes: Uint8Array.from({ length: 256 }, (_, i) => i),
};

/** Any characters except those that no database takes as text: NUL and halves of pairs. */
const anyText = fc.string({ unit: "binary", maxLength: 20 }).filter((text) => !text.includes("\0"));

const anyFact = (id: string): fc.Arbitrary<Fact> =>
  anyContent(
    { text: anyText, filled: anyText, line: anyText, statement: anyText, tag: anyText, picture: PHOTO.hash },
    () => [3, 1],
  ).map((content) => asFact(content, id, "wild"));

export function libraryContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let store: Store;
  let made = 0;

  beforeAll(async () => {
    database = await newDatabase();
    store = await database.open();
    await store.write(async ({ library }) => {
      await library.addPicture(PHOTO);
      for (const id of ["sky", "wild", "search", "pages", "cards"]) {
        await library.saveSubject({ id, name: id, demo: id === "sky", spelling: EXACT_SPELLING });
      }
    });
  });
  afterAll(() => database.drop());

  const add = (...facts: readonly FactRecord[]) => store.write(({ library }) => library.addFacts(facts));

  describe("what is stored", () => {
    it("comes back letter by letter, in every field of any fact", async () => {
      const record = fc
        .record({ fact: anyFact("x"), contentHash: anyText, search: anyText, deleted: fc.boolean() })
        .map((one): FactRecord => one);
      await fc.assert(
        fc.asyncProperty(fc.array(record, { minLength: 1, maxLength: 8 }), async (all) => {
          const facts = all.map((one) => ({ ...one, fact: { ...one.fact, id: `wild ${++made}` } }));
          await add(...facts);
          const ids = facts.map(({ fact }) => fact.id);
          const back = await store.read(({ library }) => library.facts(ids));
          expect(new Map(back.map((one) => [one.fact.id, one]))).toEqual(
            new Map(facts.map((one) => [one.fact.id, one])),
          );
        }),
        { numRuns: 25 },
      );
    });

    it.each(WILD)("comes back letter by letter: %j", async (text) => {
      const fact = storedPair(`wild ${++made}`, "wild", { prompt: text, answer: text, note: text, tags: [text] });
      await add(fact);
      expect(await store.read(({ library }) => library.fact(fact.fact.id))).toEqual(fact);
      await store.write(({ library }) =>
        library.saveSubject({ id: `s${made}`, name: text, demo: false, spelling: EXACT_SPELLING }),
      );
      expect((await store.read(({ library }) => library.subject(`s${made}`)))?.name).toBe(text);
    });

    it.each([
      ["a NUL", "Ve\0ga"],
      ["half a pair", "Ve\ud83dga"],
    ])(
      "never has %s in it: the write is refused as invalid, in any field, and nothing of it stays",
      async (_, text) => {
        const id = `unsound ${++made}`;
        const fields = ["prompt", "answer", "note", "source", "story"] as const;
        const facts = [
          ...fields.map((field) => storedPair(id, "wild", { [field]: text })),
          storedPair(id, "wild", { tags: [text] }),
          factRecord({ ...PLEIADES, statement: `${text} [x]`, id, subject: "wild", angles: ["gap-1"] }),
          factRecord({ ...BARE, kind: "picture", name: text, picture: PHOTO.hash, id, subject: "wild", angles: [] }),
        ];
        const invalid = { failure: { kind: "invalid-input" } };
        for (const fact of facts) {
          const attempt = add(storedPair(`${id} before`, "wild"), fact);
          await expect(attempt).rejects.toMatchObject(invalid);
        }
        expect(await store.read(({ library }) => library.facts([id, `${id} before`]))).toEqual([]);
        const sound = storedPair(id, "wild");
        await add(sound);
        for (const fact of facts) {
          await expect(store.write(({ library }) => library.updateFacts([fact]))).rejects.toMatchObject(invalid);
        }
        expect(await store.read(({ library }) => library.fact(id))).toEqual(sound);
        const subject = { id, name: text, demo: false, spelling: EXACT_SPELLING };
        await expect(store.write(({ library }) => library.saveSubject(subject))).rejects.toMatchObject(invalid);
        expect(await store.read(({ library }) => library.subject(id))).toBeNull();
      },
    );

    it("may be a picture, byte by byte, and the same one twice", async () => {
      await store.write(({ library }) => library.addPicture(PHOTO));
      const back = await store.read(({ library }) => library.picture(PHOTO.hash));
      expect({ ...back, bytes: [...(back?.bytes ?? [])] }).toEqual({ ...PHOTO, bytes: [...PHOTO.bytes] });
      expect(await store.read(({ library }) => library.hasPicture(PHOTO.hash))).toBe(true);
      expect(await store.read(({ library }) => library.pictureHashes())).toEqual(new Set([PHOTO.hash]));
      expect(await store.read(({ library }) => library.picture("b".repeat(64)))).toBeNull();
    });
  });

  describe("searching", () => {
    const notes = ["100 % dark", "M_31 in Andromeda", "wow! signal", "back\\slash", "quote \" and '", "plain M31"];
    const found = async (...words: string[]) => {
      const query = { subject: "search", words: words.map(foldText), limit: 50 };
      const { items, total } = await store.read(({ library }) => library.findFacts(query));
      expect(total).toBe(items.length);
      return items.map((fact) => fact.note).sort();
    };
    beforeAll(() =>
      add(...notes.map((note, i) => storedPair(`note ${i}`, "search", { note, tags: [`tag ${i}`, note] }))),
    );

    it.each([
      ["%", ["100 % dark"]],
      ["_", ["M_31 in Andromeda"]],
      ["!", ["wow! signal"]],
      ["\\", ["back\\slash"]],
      ['"', ["quote \" and '"]],
      ["'", ["quote \" and '"]],
      ["m_31", ["M_31 in Andromeda"]],
      ["%dark", []],
      ["m?31", []],
    ])("takes %s as it stands, never as a wild card", async (word, expected) => {
      expect(await found(word)).toEqual(expected);
    });

    it("wants every word, whatever its case and accents, and finds all facts for none", async () => {
      expect(await found("M31", "PLÁIN")).toEqual(["plain M31"]);
      expect(await found("m31", "dark")).toEqual([]);
      expect(await found()).toHaveLength(notes.length);
    });

    it("finds a tag by its exact name only", async () => {
      const tagged = async (tag: string) => {
        const query = { subject: "search", words: [], tag, limit: 50 };
        return (await store.read(({ library }) => library.findFacts(query))).items.map((fact) => fact.note);
      };
      for (const note of notes) expect(await tagged(note)).toEqual([note]);
      for (const none of ["100 % DARK", "tag", "ag 1", "plain M3_", 'tag 1","100 % dark']) {
        expect(await tagged(none)).toEqual([]);
      }
    });
  });

  describe("a long list of facts", () => {
    const many = 1_203;
    const ids = Array.from({ length: many }, (_, i) => `page ${String(i).padStart(5, "0")}`);
    beforeAll(() => add(...ids.map((id, i) => ({ ...storedPair(id, "pages", {}), deleted: i % 100 === 7 }))));
    const kept = ids.filter((_, i) => i % 100 !== 7);

    it("is read in pages, the newest first, without gaps or repeats, facts put away left out", async () => {
      const seen: string[] = [];
      let after: string | undefined;
      for (;;) {
        const query = { subject: "pages", words: [], limit: 250, after };
        const { items, total } = await store.read(({ library }) => library.findFacts(query));
        expect(total).toBe(kept.length);
        seen.push(...items.map((fact) => fact.id));
        after = items.at(-1)?.id;
        if (items.length < 250) break;
      }
      expect(seen).toEqual([...kept].reverse());
    });

    it("is walked through in the order in which it came", async () => {
      const seen: string[] = [];
      await store.read(async ({ library }) => {
        for await (const fact of library.eachFact("pages")) seen.push(fact.id);
      });
      expect(seen).toEqual(kept);
    });

    it("is fetched by more identities than fit in one question, repeats and strangers included", async () => {
      const asked = [...ids, ...ids.slice(0, 10), "nobody"];
      const back = await store.read(({ library }) => library.facts(asked));
      expect(back.map(({ fact }) => fact.id).sort()).toEqual(ids);
    });

    it("is counted without what was put away", async () => {
      expect((await store.read(({ library }) => library.countBySubject("fact"))).get("pages")).toBe(kept.length);
      expect((await store.read(({ library }) => library.countBySubject("card"))).get("pages")).toBeUndefined();
    });
  });

  describe("cards", () => {
    it("are found by identity, fact and subject, in the order of their numbers", async () => {
      const vega = storedPair("c vega", "cards");
      const cards = [3, 1, 2].map((number) => ({
        id: `c vega:gap-${number}`,
        number: 100 + number,
        fact: "c vega",
        subject: "cards",
        angle: `gap-${number}` as const,
      }));
      await add(vega);
      await store.write(({ library }) => library.addCards(cards));
      const ordered = [...cards].sort((a, b) => a.number - b.number);
      await store.read(async ({ library }) => {
        expect(await library.cardsOfFact("c vega")).toEqual(ordered);
        expect(await library.cardsOfFacts(["c vega", "nobody"])).toEqual(ordered);
        expect(await library.cardsOfSubject("cards")).toEqual(ordered);
        expect(await library.cards(["c vega:gap-2", "nobody:forward"])).toEqual([ordered[1]]);
        expect(await library.lastCardNumber()).toBe(103);
      });
    });

    it("never share a number", async () => {
      await add(storedPair("c deneb", "cards"));
      const card = { id: "c deneb:forward", number: 101, fact: "c deneb", subject: "cards", angle: "forward" } as const;
      await expect(store.write(({ library }) => library.addCards([card]))).rejects.toThrow(/unique/i);
    });
  });

  describe("a subject that is removed", () => {
    it("takes its facts, its cards and the pictures nobody else uses with it", async () => {
      const moon = { ...PHOTO, hash: "c".repeat(64) };
      await store.write(async ({ library }) => {
        await library.saveSubject({ id: "moons", name: "Moons", demo: false, spelling: EXACT_SPELLING });
        await library.addPicture(moon);
        await library.addFacts([
          storedPair("m1", "moons", { picture: moon.hash }),
          storedPair("m2", "moons", { picture: PHOTO.hash }),
          storedPair("m3", "sky", { picture: PHOTO.hash }),
        ]);
        await library.addCards([{ id: "m1:forward", number: 900, fact: "m1", subject: "moons", angle: "forward" }]);
      });
      await store.write(({ library }) => library.removeSubject("moons"));
      await store.read(async ({ library }) => {
        expect(await library.subject("moons")).toBeNull();
        expect((await library.facts(["m1", "m2", "m3"])).map(({ fact }) => fact.id)).toEqual(["m3"]);
        expect(await library.cards(["m1:forward"])).toEqual([]);
        expect(await library.pictureHashes()).toEqual(new Set([PHOTO.hash]));
      });
    });
  });
}
