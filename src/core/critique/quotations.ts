// What stands in quotation marks is spoken of, not said.

const QUOTED = /“[^“”]*”|„[^„“”]*[“”]|«[^«»]*»|「[^「」]*」|"[^"]*"/gu;

/** The text without its quotations. */
export const withoutQuotations = (text: string): string => text.replace(QUOTED, "");
