// Facts that say the same but for capitals, accents, marks and spaces.
import { contentKey } from "./content-key.ts";
import type { Fact } from "./fact.ts";

const SEPARATOR = "\u001f";

/** Groups of two or more facts that say the same, in the order in which their first fact came. */
export async function findDuplicates(
  facts: AsyncIterable<Fact> | Iterable<Fact>,
): Promise<readonly (readonly Fact[])[]> {
  const groups = new Map<string, Fact[]>();
  for await (const fact of facts) {
    const key = looseKey(fact);
    const group = groups.get(key);
    if (group) group.push(fact);
    else groups.set(key, [fact]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

/** `contentKey` without what is easily written in two ways. Marks that are letters' own, as in Hindi, stay. */
const looseKey = (fact: Fact): string => contentKey(fact).split(SEPARATOR).map(loose).join(SEPARATOR);

const loose = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/(?<=\p{Script=Latin}|\p{Script=Greek}|\p{Script=Cyrillic}|\p{M})\p{Mn}/gu, "")
    .toLowerCase()
    // Beside a digit a mark means something: 1.5 is not 15, and -5 not 5.
    .replace(/(?<!\p{N})\p{P}+(?!\p{N})/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();
