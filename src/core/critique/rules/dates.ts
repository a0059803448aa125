// Days, years and centuries as they are written in several languages.

/** Names of months in English, German, French, Spanish, Italian, Portuguese and (in the genitive) Russian, and their usual abbreviations. */
const MONTHS =
  "january|february|march|april|may|june|july|august|september|october|november|december|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|januar|jänner|februar|märz|mai|juni|juli|oktober|dezember|mär|okt|dez|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre|décembre|janv|févr|avr|juil|déc|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|ene|abr|ago|dic|gennaio|febbraio|aprile|maggio|giugno|luglio|settembre|ottobre|dicembre|janeiro|fevereiro|março|maio|junho|julho|setembro|outubro|novembro|dezembro|января|февраля|марта|апреля|мая|июня|июля|августа|сентября|октября|ноября|декабря";
const WEEKDAYS =
  "(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch|sonnabend|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche|lunes|martes|miércoles|jueves|viernes|sábado|domingo|lunedì|martedì|mercoledì|giovedì|venerdì|sabato|domenica";
const ERA =
  "(?:\\s*(?:AD|BCE?|CE|[vn]\\.\\s?Chr\\.?|(?:av|apr)\\.\\s?J\\.?-?C\\.?|[ad]\\.\\s?C\\.?|(?:до )?н\\.\\s?э\\.|г\\.|года))?";
const BEFORE = "(?:(?:the|on|in|le|el|il|am|den|der|dem|um|vers?|about|around|circa|etwa|rund|ca?\\.|в|около)\\s+)*";

const DAY = new RegExp(
  `^(?:(?:${WEEKDAYS}),?\\s+)?${BEFORE}(?:\\p{Nd}{1,2}(?:\\.|st|nd|rd|th|er|[º°])?\\s+)?(?:(?:of|de|di)\\s+)?(?:${MONTHS})\\.?` +
    `(?:\\s+\\p{Nd}{1,2}(?:st|nd|rd|th)?(?=,|\\s|$))?(?:,?\\s*(?:(?:of|de|del)\\s+)?\\p{Nd}{1,4})?${ERA}$`,
  "iu",
);
const CENTURY = new RegExp(
  `^${BEFORE}\\p{Nd}{1,2}(?:\\.|st|nd|rd|th|er|e|ème|[º°])?[\\s-]*(?:century|jahrhunderts?|siècle|siglo|secolo|século|век[а-я]*|世紀|世纪)${ERA}$`,
  "iu",
);
const YEAR = new RegExp(
  `^(?:(?:the|in|im|year|jahre?|anno|en|el|año|nel|l['’]an|em|ca?\\.|circa|about|around|um|etwa|vers|около|в)\\s+)*\\p{Nd}{1,4}${ERA}$`,
  "iu",
);

/** Whether a text is a day, a year, or a century, and nothing else. A month without a number is none. */
export const isDate = (text: string): boolean =>
  /\p{Nd}/u.test(text) && (DAY.test(text) || CENTURY.test(text) || YEAR.test(text));
