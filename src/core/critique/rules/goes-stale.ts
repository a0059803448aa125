// Words that are true only while they are written.
import type { Fact } from "../../facts/fact.ts";
import { statedWords } from "../../facts/fact-words.ts";
import type { Asked } from "../asked.ts";
import { languageOf } from "../languages.ts";
import type { Remark } from "../note.ts";
import { withoutQuotations } from "../quotations.ts";

const L = "(?<![\\p{L}\\p{M}])";
const R = "(?![\\p{L}\\p{M}])";
const words = (...all: string[]): RegExp => new RegExp(`${L}(?:${all.join("|")})${R}`, "iu");

/** Words for "at present", by language; where words run on, without bounds. */
const STALE: Readonly<Record<string, RegExp>> = {
  en: words(
    "currently",
    "at present",
    "at the moment",
    "nowadays",
    "these days",
    "today(?!['’]s sky)",
    "right now",
    "as of (?:now|today)",
    "so far",
    "to date",
    "up to now",
    "until now",
    "recently",
    "most recent",
    "the latest(?! (?:possible|date|day|time|hour))",
    "current (?:number|record|holder|president|director|population|count|age|price|head|leader|name|version|state)",
    "newest",
    "this (?:year|month|decade|century)",
    "last (?:night|week|month|year)(?! of)",
    "next (?:week|month|year)",
    "now(?! and then)",
    "presently",
    "still (?:the|holds|has)",
    "record[- ]holder",
  ),
  de: words(
    "derzeit",
    "derzeitige[nrms]?",
    "zurzeit",
    "zur ?zeit",
    "gegenwärtig\\w*",
    "momentan\\w*",
    "im moment",
    "heutzutage",
    "heutige[nrms]?",
    "heute",
    "aktuell(?:e[nrms]?)?",
    "bisher(?:ige[nrms]?)?",
    "bislang",
    "neuerdings",
    "kürzlich",
    "vor kurzem",
    "neueste[nrms]?",
    "dieses jahr",
    "in diesem jahr",
    "letztes jahr",
    "jetzt",
    "inzwischen",
    "noch immer",
  ),
  fr: words(
    "actuellement",
    "actuel(?:le)?s?",
    "à présent",
    "en ce moment",
    "de nos jours",
    "aujourd['’]hui",
    "récemment",
    "dernièrement",
    "le plus récent",
    "la plus récente",
    "cette année",
    "l['’]année dernière",
    "jusqu['’]à présent",
    "maintenant",
    "à ce jour",
  ),
  es: words(
    "actualmente",
    "actual(?:es)?",
    "en la actualidad",
    "hoy(?: en día)?",
    "por ahora",
    "hasta (?:ahora|la fecha)",
    "recientemente",
    "más recientes?",
    "este año",
    "el año pasado",
    "ahora",
    "de momento",
  ),
  it: words(
    "attualmente",
    "attual[ei]",
    "al momento",
    "oggi(?:giorno)?",
    "finora",
    "recentemente",
    "più recent[ei]",
    "quest['’]anno",
    "l['’]anno scorso",
    "adesso",
    "ora (?:è|ha)",
  ),
  pt: words(
    "atualmente",
    "hoje",
    "agora",
    "neste momento",
    "até (?:agora|hoje)",
    "recentemente",
    "este ano",
    "mais recentes?",
  ),
  ru: words(
    "в настоящее время",
    "на данный момент",
    "сейчас",
    "сегодня",
    "ныне",
    "недавно",
    "до сих пор",
    "в этом году",
    "нынешн\\p{L}+",
  ),
  ko: /현재|지금|최근|올해|오늘날/u,
  ja: /現在(?!位置)|今年|最近|最新|今のところ|今日では/u,
  zh: /目前|现在|現在|今年|最近|最新|迄今|如今/u,
};

/** What can only be a word of one of these languages, whatever language a text is taken for. */
const PLAIN = words(
  ..."currently nowadays derzeit derzeitige[nrms]? heutzutage zurzeit actuellement actualmente attualmente atualmente".split(
    " ",
  ),
);

/** `goes-stale`: a statement about now without a date. */
export function goesStale(fact: Fact, _asked: readonly Asked[]): readonly Remark[] {
  const text = statedWords(fact).join("\n");
  // What says when it was true stays true.
  if (
    /(?:as of|stand|état|en|a|al|in|since|seit|depuis|desde|dal|vom|\()\s*(?:\p{L}+\.?\s+)?(?:1[5-9]|20)\d\d(?!\d)/iu.test(
      text,
    )
  )
    return [];
  const stale = STALE[languageOf(text, fact.language)];
  const found = statedWords(fact)
    // A word in quotation marks, or one that is a side by itself, is spoken of.
    .map((words) => withoutQuotations(words).trim())
    .map((words) => ({ words, match: (stale?.exec(words) ?? PLAIN.exec(words))?.[0] }))
    .find(({ words, match }) => match !== undefined && match !== words)?.match;
  if (found === undefined) return [];
  const message = `“${found}” will not always be true. Say of which year, such as “in 2026”, or leave it out.`;
  return [{ rule: "goes-stale", angle: null, message, about: text, fix: null }];
}
