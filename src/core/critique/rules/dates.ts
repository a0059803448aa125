// Days, years and centuries as they are written in several languages.

/** Names of months in English, German, French, Spanish, Italian, Portuguese, Dutch, Turkish, Arabic, Hebrew, Hindi, Thai and (in the genitive) Russian, Polish and Greek, and usual abbreviations of the first ones. From memory of the languages. */
const MONTHS =
  "january|february|march|april|may|june|july|august|september|october|november|december|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|januar|jänner|februar|märz|mai|juni|juli|oktober|dezember|mär|okt|dez|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre|décembre|janv|févr|avr|juil|déc|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|ene|abr|ago|dic|gennaio|febbraio|aprile|maggio|giugno|luglio|settembre|ottobre|dicembre|janeiro|fevereiro|março|maio|junho|julho|setembro|outubro|novembro|dezembro|января|февраля|марта|апреля|мая|июня|июля|августа|сентября|октября|ноября|декабря|stycznia|lutego|marca|kwietnia|maja|czerwca|lipca|sierpnia|września|października|listopada|grudnia|januari|februari|maart|mei|augustus|ocak|şubat|mart|nisan|mayıs|haziran|temmuz|ağustos|eylül|ekim|kasım|aralık|Ιανουαρίου|Φεβρουαρίου|Μαρτίου|Απριλίου|Μαΐου|Ιουνίου|Ιουλίου|Αυγούστου|Σεπτεμβρίου|Οκτωβρίου|Νοεμβρίου|Δεκεμβρίου|يناير|فبراير|مارس|أبريل|إبريل|مايو|يونيو|يوليو|أغسطس|سبتمبر|أكتوبر|نوفمبر|ديسمبر|ב?ינואר|ב?פברואר|ב?מרץ|ב?אפריל|ב?מאי|ב?יוני|ב?יולי|ב?אוגוסט|ב?ספטמבר|ב?אוקטובר|ב?נובמבר|ב?דצמבר|जनवरी|फ़रवरी|फरवरी|मार्च|अप्रैल|मई|जून|जुलाई|अगस्त|सितंबर|अक्टूबर|नवंबर|दिसंबर|มกราคม|กุมภาพันธ์|มีนาคม|เมษายน|พฤษภาคม|มิถุนายน|กรกฎาคม|สิงหาคม|กันยายน|ตุลาคม|พฤศจิกายน|ธันวาคม";
const WEEKDAYS =
  "(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch|sonnabend|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche|lunes|martes|miércoles|jueves|viernes|sábado|domingo|lunedì|martedì|mercoledì|giovedì|venerdì|sabato|domenica";
const ERA =
  "(?:\\s*(?:AD|BCE?|CE|[vn]\\.\\s?Chr\\.?|(?:av|apr)\\.\\s?J\\.?-?C\\.?|[ad]\\.\\s?C\\.?|(?:до )?н\\.\\s?э\\.|г\\.|года|году|roku|r\\.|yılı(?:nda)?))?";
const BEFORE =
  "(?:(?:the|on|in|τ[οη]|στις|w|op|le|el|il|am|den|der|dem|um|vers?|about|around|circa|etwa|rund|ca?\\.|в|около)\\s+)*";

const DAY = new RegExp(
  `^(?:(?:${WEEKDAYS}),?\\s+)?${BEFORE}(?:\\p{Nd}{1,2}(?:\\.?\\s?[-–]\\s?\\p{Nd}{1,2})?(?:\\.|st|nd|rd|th|er|[º°])?\\s+)?(?:(?:of|de|di)\\s+)?(?:${MONTHS})\\.?` +
    `(?:\\s+\\p{Nd}{1,2}(?:st|nd|rd|th)?(?=,|\\s|$))?(?:,?\\s*(?:(?:of|de|del)\\s+)?\\p{Nd}{1,4})?${ERA}$`,
  "iu",
);
const CENTURY = new RegExp(
  `^${BEFORE}\\p{Nd}{1,2}(?:\\.|st|nd|rd|th|er|e|ème|[º°])?[\\s-]*(?:century|jahrhunderts?|siècle|siglo|secolo|século|век[а-я]*|世紀|世纪)${ERA}$`,
  "iu",
);
const YEAR = new RegExp(
  `^(?:(?:the|in|im|year|jahre?|anno|en|el|año|nel|l['’]an|em|ca?\\.|circa|about|around|um|etwa|vers|около|в|το|w|roku|rok|בשנת|שנת|عام|سنة|ปี|พ\\.ศ\\.|ค\\.ศ\\.)\\s+)*\\p{Nd}{1,4}${ERA}$`,
  "iu",
);

/** 1969年7月20日, in Chinese, Japanese and Korean. */
const EASTERN = /^(?:\p{Nd}{1,4}\s*[年년]\s*)?(?:\p{Nd}{1,2}\s*[月월]\s*)?(?:\p{Nd}{1,2}\s*[日일])?$/u;

/** In UTF-16 code units, weekday and era included. */
const LONGEST_DATE = 100;

/** Whether a text is a day, a year, or a century, and nothing else. A month without a number is none. */
export const isDate = (text: string): boolean =>
  text.length <= LONGEST_DATE &&
  /\p{Nd}/u.test(text) &&
  (DAY.test(text) || CENTURY.test(text) || YEAR.test(text) || EASTERN.test(text.trim()));
