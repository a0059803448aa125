// Signs of web pages in a text: entities such as &ouml; and tags such as <b>.

/** Entities by name, each before its character (HTML Living Standard, named character references; those met in lists). */
const ENTITIES: ReadonlyMap<string, string> = new Map(
  (
    "amp & lt < gt > quot \" apos ' ndash – mdash — hellip … deg ° middot · times × plusmn ± minus − frac12 ½ sup2 ² sup3 ³ micro µ " +
    "laquo « raquo » ldquo “ rdquo ” bdquo „ lsquo ‘ rsquo ’ rarr → larr ← prime ′ Prime ″ " +
    "auml ä ouml ö uuml ü euml ë iuml ï Auml Ä Ouml Ö Uuml Ü szlig ß aacute á eacute é iacute í oacute ó uacute ú Aacute Á Eacute É " +
    "agrave à egrave è igrave ì ograve ò ugrave ù acirc â ecirc ê icirc î ocirc ô ucirc û ccedil ç Ccedil Ç ntilde ñ Ntilde Ñ " +
    "atilde ã otilde õ aring å Aring Å oslash ø Oslash Ø aelig æ oelig œ iexcl ¡ iquest ¿ " +
    "alpha α beta β gamma γ delta δ epsilon ε zeta ζ eta η theta θ iota ι kappa κ lambda λ mu μ nu ν xi ξ omicron ο pi π rho ρ sigma σ tau τ upsilon υ phi φ chi χ psi ψ omega ω"
  )
    .split(" ")
    .flatMap((name, i, all) => (i % 2 === 0 ? [[name, all[i + 1] ?? ""] as const] : [])),
);
const ENTITY = /&(?:([a-zA-Z]{2,8}\d{0,2})|#(\d{2,6})|#x([0-9a-fA-F]{2,5}));/gu;

/** The text with characters for the names of characters. */
export const decodeEntities = (text: string): string =>
  text.replace(ENTITY, (whole, name?: string, decimal?: string, hex?: string) => {
    if (name === "nbsp") return " ";
    if (name !== undefined) return ENTITIES.get(name) ?? whole;
    const point = decimal === undefined ? Number.parseInt(hex ?? "", 16) : Number(decimal);
    return point >= 0x20 && point <= 0x10ffff && !(point >= 0xd800 && point <= 0xdfff)
      ? String.fromCodePoint(point)
      : whole;
  });

const RAISED = /<(sup|sub)>\s*([+-]?\d+)\s*<\/\1>/giu;
const IN_A_LINE = /<\/?(?:b|i|u|em|strong|span|font|small)(?:\s+[a-z-]+=[^<>]*)?\s*\/?>/giu;
const OF_BLOCKS = /<\/?(?:p|br|div|li|ul|ol)(?:\s+[a-z-]+=[^<>]*)?\s*\/?>/giu;

/** Tags whose removal would change what is said: x<sup>n</sup>. */
export const MEANINGFUL_TAG = /<\/?su[bp]>/iu;

/** The text without tags; digits that were raised or lowered stay so (10⁸, H₂O). */
export const dropTags = (text: string): string =>
  text
    .replace(RAISED, (_, tag: string, digits: string) =>
      [...digits].map((digit) => signFor(digit, tag.toLowerCase() === "sup")).join(""),
    )
    .replace(IN_A_LINE, "")
    .replace(OF_BLOCKS, " ");

const signFor = (digit: string, raised: boolean): string =>
  [...(raised ? "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻" : "₀₁₂₃₄₅₆₇₈₉₊₋")]["0123456789+-".indexOf(digit)] ?? digit;
