// Tables of facts about which a rule speaks, or stays silent.
import { describe, expect, it } from "vitest";
import { defaultAngles } from "../../src/core/cards/default-angles.ts";
import { critiqueFact } from "../../src/core/critique/critique-fact.ts";
import { critiqueFacts } from "../../src/core/critique/critique-facts.ts";
import type { Rule } from "../../src/core/critique/note.ts";
import { type Fact, type FactContent, type FactExtras, NO_EXTRAS } from "../../src/core/facts/fact.ts";
import { factTitle } from "../../src/core/facts/fact-title.ts";
import { freshGaps } from "../../src/core/facts/gaps.ts";
import { freshNumbers } from "../../src/core/facts/list-numbers.ts";

type Extras = Partial<FactExtras> & Partial<Pick<Fact, "angles">>;

let made = 0;

function fact(content: FactContent, angles?: Fact["angles"]): Fact {
  return { ...content, id: `fact ${made++}`, subject: "sky", angles: angles ?? defaultAngles(content) };
}

/** A pair. */
export const pair = (prompt: string, answer: string, { angles, ...more }: Extras = {}): Fact =>
  fact({ ...NO_EXTRAS, ...more, kind: "pair", prompt, answer }, angles);

/** A statement with [gaps]. */
export const statement = (text: string, { angles, ...more }: Extras = {}): Fact =>
  fact({ ...NO_EXTRAS, ...more, kind: "statement", statement: text, gaps: freshGaps(text) }, angles);

/** A picture with its name. */
export const picture = (name: string, { angles, ...more }: Extras = {}): Fact =>
  fact({ ...NO_EXTRAS, ...more, kind: "picture", name, picture: PICTURE }, angles);

/** A list in order. */
export const list = (title: string, items: readonly string[], { angles, ...more }: Extras = {}): Fact =>
  fact({ ...NO_EXTRAS, ...more, kind: "list", title, items, numbers: freshNumbers(items) }, angles);

/** A word to be spelt. */
export const spelling = (clue: string, word: string, { angles, ...more }: Extras = {}): Fact =>
  fact({ ...NO_EXTRAS, ...more, kind: "spelling", clue, word, accents: "count", letterCase: "ignore" }, angles);

/** The hash of some picture. */
export const PICTURE = "a".repeat(64);

/** Says that a rule speaks about each of some facts and about none of others. Facts may be groups that belong together. */
export function ruleCases(
  rule: Rule,
  speaks: readonly (Fact | readonly Fact[])[],
  silent: readonly (Fact | readonly Fact[])[],
): void {
  const name = (facts: readonly Fact[]): string =>
    facts.map((one) => `${factTitle(one)} / ${"answer" in one ? one.answer : ""}`).join(" + ");
  const rules = (facts: readonly Fact[]): readonly Rule[] => critiqueFacts(facts).map((note) => note.rule);
  const group = (facts: Fact | readonly Fact[]): readonly Fact[] => ("kind" in facts ? [facts] : facts);
  describe(rule, () => {
    it("has eight examples and eight near misses", () => {
      expect(speaks.length).toBeGreaterThanOrEqual(8);
      expect(silent.length).toBeGreaterThanOrEqual(8);
    });
    it.each(speaks.map((facts) => [name(group(facts)), group(facts)] as const))("speaks: %s", (_, facts) =>
      expect(rules(facts)).toContain(rule),
    );
    it.each(silent.map((facts) => [name(group(facts)), group(facts)] as const))("is silent: %s", (_, facts) =>
      expect(rules(facts)).not.toContain(rule),
    );
  });
}

/** The fact after the fix that the rule offers; fails if it offers none. */
export function fixed(one: Fact, rule: Rule): Fact {
  const fix = critiqueFact(one).find((note) => note.rule === rule)?.fix;
  if (!fix) throw new Error(`no fix for ${rule}`);
  return { ...fix.content, id: one.id, subject: one.subject, angles: fix.angles ?? one.angles };
}
