// Points that end no sentence, by language. From memory of the languages; a list that errs leaves two sentences joined.

const LISTS: Readonly<Record<string, string>> = {
  en: "mr mrs ms dr prof st sr jr vs etc e.g i.e cf ca approx no vol fig figs p pp ed eds est dept univ jan feb mar apr jun jul aug sep sept oct nov dec a.m p.m b.c a.d u.s u.k",
  de: "dr prof hr fr st bzw z.b d.h u.a u.u usw etc ca vgl s.o s.u nr bd abb tab evtl ggf inkl zzgl sog geb gest jh jhd mio mrd jan feb apr jun jul aug sep sept okt nov dez i.d.r o.ä u.s.w",
  fr: "m mme mlle dr pr st ste etc cf p.ex env av apr j.-c fig n° vol éd chap janv févr avr juil sept oct nov déc",
  es: "sr sra srta dr dra d dña ud uds etc p.ej cf aprox núm pág págs vol fig ed a.c d.c ee.uu s.a",
  it: "sig sig.ra dott dott.ssa prof ecc es p.es cfr ca n pag vol fig ed a.c d.c",
  nl: "dhr mevr dr prof bijv d.w.z o.a enz ca nr blz fig",
  pt: "sr sra dr dra prof etc p.ex cf aprox n.º pág vol fig a.c d.c",
};

const KNOWN: ReadonlySet<string> = new Set(Object.values(LISTS).flatMap((list) => list.split(" ")));

/** Whether a sentence that ends so goes on: with an abbreviation, an initial, or (in German and its neighbours) an ordinal number. */
export function goesOn(sentence: string, next: string): boolean {
  const end = sentence.trimEnd();
  if (!end.endsWith(".")) return false;
  const last = /(\S+)\.$/u.exec(end)?.[1] ?? "";
  const word = last.replace(/^[("'«„“]+/u, "").toLowerCase();
  if (KNOWN.has(word) || KNOWN.has(word.replace(/\.$/u, ""))) return /^\s*[\p{L}\p{N}("«„“]/u.test(next);
  // An initial, as in J. C. Adams; "z. B." is written with a blank as well.
  if (/^\p{L}$/u.test(word)) return /^\s*\p{L}/u.test(next);
  // 3. März, 19. Jahrhundert: a number of one or two digits, and the sentence does not end there in a date.
  return (
    /^\p{Nd}{1,2}$/u.test(word) &&
    /^\s*\p{L}/u.test(next) &&
    !/\s(?:in|at|of|is|are|was|ist|sind|war|um|auf)\s+\S+\.$/iu.test(end)
  );
}
