// Words that are true only while they are written.
import type { Fact } from "../../facts/fact.ts";
import { statedWords } from "../../facts/fact-words.ts";
import type { Asked } from "../asked.ts";
import { languageOfText } from "../languages.ts";
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
    "at the moment(?! (?:of|when))",
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
    "im moment(?! (?:de[rs]|als|in dem|wo))",
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
    "al momento(?! (?:d[ei]|in cui))",
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
  nl: words("momenteel", "tegenwoordig", "vandaag(?: de dag)?", "huidige?", "onlangs", "dit jaar", "nieuwste"),
  pl: words(
    "obecn(?:ie|y|a|e|ego|ej|ych)",
    "aktualn(?:ie|y|a|e|ego|ej|ych)",
    "teraz",
    "dziś",
    "dzisiaj",
    "niedawno",
    "ostatnio",
    "w tym roku",
    "jak dotąd",
    "do tej pory",
  ),
  tr: words("şu an(?:da|ki)", "şimdi(?:ki)?", "günümüzde", "bugün(?:kü)?", "son zamanlarda", "bu yıl", "şimdiye kadar"),
  el: words("σήμερα", "τώρα", "αυτή τη στιγμή", "πρόσφατα", "φέτος", "μέχρι στιγμής", "σημεριν\\p{L}+"),
  ar: words(
    "حالي\u064b?ا\u064b?",
    "الآن",
    "في الوقت الحاضر",
    "في الوقت الحالي",
    "مؤخر\u064b?ا\u064b?",
    "هذا العام",
    "حتى الآن",
  ),
  he: words("כיום", "כרגע", "עכשיו", "כעת", "לאחרונה", "נכון להיום", "עד כה"),
  hi: words("वर्तमान में", "इस समय", "अभी", "आजकल", "इस साल", "इस वर्ष", "हाल ही में", "अब तक"),
  th: /ปัจจุบัน|ขณะนี้|ตอนนี้|ปีนี้|ล่าสุด|เมื่อเร็ว ?ๆ ?นี้/u,
  ko: /현재|지금|최근|올해|오늘날/u,
  ja: /現在(?!位置|地)|今年|最近(?!点|接)|最新|今のところ|今日では/u,
  zh: /目前|现在|現在|今年|(?<![离離距][^。，、]{0,8})最近(?![的距点點])|最新|迄今|如今/u,
};

/** What says when it was true. */
const DATED =
  /(?:as of|stand|état|en|a|al|in|since|seit|depuis|desde|dal|vom|em|w|roku|в|на|[(（]|截至)\s*(?:\p{L}+\.?\s+)?(?:1[5-9]|20)\d\d(?!\d)|(?:1[5-9]|20)\d\d\s*[年년]\s*(?:\d{1,2}\s*[月월]\s*)?(?:現在|现在|目前|時点|현재|기준)/iu;

/** What can only be a word of one of these languages, whatever language a text is taken for. */
const PLAIN = words(
  "şu an(?:da|ki)",
  ..."currently nowadays derzeit derzeitige[nrms]? heutzutage zurzeit actuellement actualmente attualmente atualmente momenteel obecnie aktualnie günümüzde".split(
    " ",
  ),
);

/** `goes-stale`: a statement about now without a date. */
export function goesStale(fact: Fact, _asked: readonly Asked[]): readonly Remark[] {
  const text = statedWords(fact).join("\n");
  // What says when it was true stays true.
  if (DATED.test(text)) return [];
  const stale = STALE[languageOfText(text, fact.language)];
  const found = statedWords(fact)
    // A word in quotation marks, or one that is a side by itself, is spoken of.
    .map((words) => withoutQuotations(words).trim())
    .map((words) => ({ words, match: (stale?.exec(words) ?? PLAIN.exec(words))?.[0] }))
    .find(({ words, match }) => match !== undefined && match !== words)?.match;
  if (found === undefined) return [];
  const message = `“${found}” will not always be true. Say of which year, such as “in 2026”, or leave it out.`;
  return [{ rule: "goes-stale", angle: null, message, about: text, fix: null }];
}
