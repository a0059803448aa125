// How often the critique is right, on 394 cards by somebody else's pen, and labels given by reading.
// Run: npm run report:critique   (a few seconds). docs/critique-labels.md says where the cards and labels are from.
//
// Half of the cards, by a hash, may be looked at when a rule is mended; the other half is only for the figure.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import { defaultAngles } from "../src/core/cards/default-angles.ts";
import { critiqueFacts } from "../src/core/critique/critique-facts.ts";
import { RULES, type Rule } from "../src/core/critique/note.ts";
import { type Fact, type FactContent, NO_EXTRAS } from "../src/core/facts/fact.ts";
import { freshGaps } from "../src/core/facts/gaps.ts";
import { hash32 } from "../src/core/random.ts";
import { betaQuantile } from "../src/core/recall/beta.ts";

type Row = Readonly<Record<"row" | "recipe" | "kind" | "prompt" | "answer" | "picture" | "labels", string>>;

const file = fileURLToPath(new URL("fixtures/labelled-cards.csv", import.meta.url));
const rows: readonly Row[] = parse(readFileSync(file), { columns: true });

function toFact({ row, kind, prompt, answer }: Row): Fact {
  const content: FactContent =
    kind === "pair"
      ? { ...NO_EXTRAS, kind, prompt, answer }
      : kind === "statement"
        ? { ...NO_EXTRAS, kind, statement: prompt, gaps: freshGaps(prompt) }
        : { ...NO_EXTRAS, kind: "picture", name: prompt, picture: hash32("p", row).toString(16).padStart(64, "0") };
  return { ...content, id: row, subject: "labelled", angles: defaultAngles(content) };
}

const said = new Map<string, Set<Rule>>(rows.map(({ row }) => [row, new Set()]));
for (const { fact, rule } of critiqueFacts(rows.map(toFact))) said.get(fact)?.add(rule);

interface Counts {
  right: number;
  wrong: number;
  missed: number;
}

function count(some: readonly Row[], rule: Rule): Counts {
  const counts: Counts = { right: 0, wrong: 0, missed: 0 };
  for (const { row, labels } of some) {
    const meant = labels.split(" ").includes(rule);
    const spoken = said.get(row)?.has(rule) === true;
    if (meant && spoken) counts.right++;
    if (!meant && spoken) counts.wrong++;
    if (meant && !spoken) counts.missed++;
  }
  return counts;
}

/** A share with its exact 95 % interval (Clopper and Pearson 1934). */
function share(hits: number, all: number): string {
  if (all === 0) return "–".padStart(15);
  const low = hits === 0 ? 0 : betaQuantile({ recalled: hits, missed: all - hits + 1 }, 0.025);
  const high = hits === all ? 1 : betaQuantile({ recalled: hits + 1, missed: all - hits }, 0.975);
  const percent = (part: number): string => (100 * part).toFixed(0);
  return `${percent(hits / all)} (${percent(low)}–${percent(high)})`.padStart(15);
}

const held = (row: Row): boolean => hash32("half", row.prompt + row.answer) % 2 === 0;

for (const [name, some] of [
  ["looked at when rules are mended", rows.filter((row) => !held(row))],
  ["held out", rows.filter(held)],
] as const) {
  console.log(`\n${some.length} cards ${name}`);
  console.log(`${"rule".padEnd(20)} labelled   precision, %      recall, %`);
  const total: Counts = { right: 0, wrong: 0, missed: 0 };
  for (const rule of RULES) {
    const { right, wrong, missed } = count(some, rule);
    total.right += right;
    total.wrong += wrong;
    total.missed += missed;
    if (right + wrong + missed === 0) continue;
    console.log(
      `${rule.padEnd(20)} ${String(right + missed).padStart(8)} ${share(right, right + wrong)} ${share(right, right + missed)}`,
    );
  }
  const { right, wrong, missed } = total;
  console.log(
    `${"all".padEnd(20)} ${String(right + missed).padStart(8)} ${share(right, right + wrong)} ${share(right, right + missed)}`,
  );
}
if (process.argv.includes("--rows"))
  for (const row of rows.filter((one) => !held(one))) {
    const meant = new Set(row.labels.split(" ").filter((label) => label !== ""));
    const spoken = said.get(row.row) ?? new Set();
    const differing = [
      ...[...meant].filter((one) => !spoken.has(one as Rule)).map((one) => `missed ${one}`),
      ...[...spoken].filter((one) => !meant.has(one)).map((one) => `wrong ${one}`),
    ];
    if (differing.length > 0) console.log(`${row.row} ${row.prompt} / ${row.answer}: ${differing.join(", ")}`);
  }
