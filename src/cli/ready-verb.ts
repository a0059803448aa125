// longhold ready: how fast, and until when, new cards should come so that most are known on a date.
import { daysBetween } from "../core/calendar/local-date.ts";
import { type DeadlineChoice, type DeadlinePlan, planDeadline } from "../core/load/deadline.ts";
import { counted } from "../core/words.ts";
import { wholeNumber } from "./options.ts";
import { bandWords, dateFrom, LIMIT_OPTIONS, limitFrom, PLAN_OPTIONS, planFrom, todayHere } from "./plan-options.ts";
import { type Call, JSON_OPTION, printJson, type Verb } from "./verb.ts";

/** Most days to the date, facts, angles of a fact, and rows of the curve that are printed. */
const MOST = { days: 1_100, facts: 100_000, angles: 20, rows: 24 } as const;

/** Prints pace, last date for new cards and the number recalled on the date, with the curve behind them. */
export const readyVerb: Verb = {
  name: "ready",
  about: "print how many new cards a day, and until when, to know most of them on a date",
  options: {
    by: { type: "string", about: "the date on which the cards are wanted" },
    facts: { type: "string", about: "how many new facts there are to learn" },
    angles: { type: "string", about: "from how many sides each is asked, a card for each (1)" },
    ...LIMIT_OPTIONS,
    ...PLAN_OPTIONS,
    start: { type: "string", about: "the date of day 1 of a box that is begun empty (today)" },
    json: JSON_OPTION,
  },
  async run(call) {
    const by = dateFrom(call, "by");
    if (by === null) throw call.usage("--by DATE is missing");
    const facts = wholeNumber(call, "facts", { least: 1, most: MOST.facts });
    if (facts === undefined) throw call.usage("--facts N is missing");
    const cards = facts * (wholeNumber(call, "angles", { least: 1, most: MOST.angles }) ?? 1);
    const { posterior, dated: _dated, stock: _stock, pace, ...plan } = await planFrom(call, todayHere(Date.now()));
    const days = daysBetween(plan.from, by);
    if (days < 1 || days > MOST.days)
      throw call.usage(`--by must lie 1 to ${MOST.days} days after ${plan.from}, the first day of practice`);
    const limit = limitFrom(call, pace);
    const found = planDeadline({ ...plan, posterior, by, cards, limit, quantiles: [0.05, 0.95] });
    if (call.values.json) printJson(call, { ...asJson(found), bands: bandWords(posterior) });
    else call.out(wordsFor(call, found, { cards, bands: bandWords(posterior) }));
    return 0;
  },
};

function choiceJson({ each, last, introduced, recalled }: DeadlineChoice) {
  const [q05, q95] = recalled.quantiles;
  return { new: each, lastNew: last, introduced, recalled: { mean: recalled.mean, sd: recalled.sd, q05, q95 } };
}

const asJson = ({ best, gentle, curve, sittings, within }: DeadlinePlan) => ({
  ...choiceJson(best),
  gentle: choiceJson(gentle),
  curve: curve.map(choiceJson),
  sittings,
  within,
});

interface Asked {
  readonly cards: number;
  /** What the ranges hold. */
  readonly bands: string;
}

function wordsFor(call: Call, { best, gentle, curve, within }: DeadlinePlan, { cards, bands }: Asked): string {
  if (!within || best.last === null)
    return "No new cards fit: the limit is too small, or those in the box already pass it.\n";
  const line = ({ each, last, introduced, recalled }: DeadlineChoice): string => {
    const [low, high] = recalled.quantiles;
    return (
      `${counted(each, "new card")} a day until ${last}, ${counted(introduced, "card")} in all; on ${call.values.by} ` +
      `about ${Math.round(recalled.mean)} recalled, ${low} to ${high} nine times in ten`
    );
  };
  // A page of the curve is enough to see it; --json has every point.
  const every = Math.ceil(curve.length / MOST.rows);
  const shown = curve.filter((one, i) => i % every === 0 || one === best || i === curve.length - 1);
  const rows = shown.map(
    ({ each, last, introduced, recalled: { mean, quantiles } }) =>
      `${last}${String(each).padStart(6)}${String(introduced).padStart(8)}${mean.toFixed(1).padStart(10)}` +
      `  ${quantiles.join(" to ")}`,
  );
  return [
    `of ${counted(cards, "card")}:`,
    line(best),
    ...(gentle.each < best.each ? [`more gently: ${line(gentle)}`] : []),
    "",
    "last new    each   cards  recalled  nine in ten",
    ...rows,
    `the ranges hold ${bands}; recall is taken to fall between visits along a published curve of forgetting`,
    "",
  ].join("\n");
}
