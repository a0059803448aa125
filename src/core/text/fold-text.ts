// Text as it is compared and searched where spelling is not the point.

/** Marks that are put on letters: accents, and the vowel points of Hebrew and Arabic. Vowel signs as in Hindi are letters of their own, and so are the marks that make が of か. */
const ACCENT =
  /(?=\p{M})(?![\u3099\u309a])[\p{Script=Inherited}\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Cyrillic}\p{Script=Greek}]/gu;

/** Without accents and capitals; compatibility forms (ﬁ, ², full-width letters) as their plain ones. */
export const foldText = (text: string): string => text.normalize("NFKD").replace(ACCENT, "").toLowerCase();
