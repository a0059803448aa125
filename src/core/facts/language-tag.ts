// Language tags after BCP 47 (RFC 5646), by their form: which of them exist is not checked.

const TAG = /^[a-z]{2,8}(?:-[a-z\d]{1,8})*$/i;
const LONGEST = 35;

/** Whether a text is a language tag such as "en" or "pt-BR", or empty. */
export const isLanguageTag = (text: string): boolean => text === "" || (text.length <= LONGEST && TAG.test(text));
