// Questions that are answered by yes or no.

import type { Fact } from "../../facts/fact.ts";
import { foldText } from "../../text/fold-text.ts";
import { wordsOf } from "../../text/words-of.ts";
import type { Asked } from "../asked.ts";
import { languageOf } from "../languages.ts";
import type { Remark } from "../note.ts";

const folded = (words: string): ReadonlySet<string> => new Set(words.split(" ").map(foldText));

/** Yes and no in English, German, French, Spanish, Italian, Portuguese, Dutch, Polish, Russian, Greek, Turkish, Arabic, Hebrew, Hindi, Thai, Chinese, Japanese and Korean. */
const YES_NO = folded(
  "yes no true false right wrong correct incorrect ja nein richtig falsch wahr oui non vrai faux si no verdadero falso cierto vero sim nao verdadeiro nee juist onjuist tak nie prawda fałsz falsz да нет верно неверно правда ложь ναι οχι evet hayır hayir doğru yanlış نعم لا صحيح خطا כן לא נכון הא नहीं हां हाँ सही गलत ใช่ ไม่ใช่ ไม่ จริง เท็จ ไม่มี 是 不是 否 对 错 不对 正确 错误 はい いいえ 正しい 예 아니요 네 아니오 아니다 그렇다 맞다 有 没有 沒有 会 不会 會 不會 能 不能 可以 不可以 是的 不 不對 違う いえ σωστό λάθος صح",
);
/** Those that say whether a sentence is true. */
const TRUTH = folded(
  "true false σωστό λάθος wahr falsch richtig vrai faux verdadero falso vero verdadeiro prawda fałsz falsz верно неверно правда ложь 正しい 正确 错误",
);
/** Those that are yes or no whatever follows. */
const CERTAIN = folded("yes ja nein oui да evet hayır نعم はい いいえ");

/** Questions end so; in Japanese also with か, in Chinese with 吗, in Greek with a semicolon. */
const QUESTION = /[?？؟]\s*["”»)]*$|か[。.]?$|[吗嗎]$|(?:หรือไม่|ไหม|หรือเปล่า|หรือยัง)$|\p{Script=Greek}\s*;$/u;
const TRUE_OR_FALSE =
  /^\P{L}*(?:true or false|right or wrong|richtig oder falsch|wahr oder falsch|vrai ou faux|verdadero o falso|vero o falso|verdadeiro ou falso|waar of niet waar|prawda czy fałsz|doğru mu,? yanlış mı|σωστό ή λάθος|верно ли|правда ли|נכון או לא נכון|صح أم خطأ)/iu;
/** English, German and French questions that were left without their mark begin so. */
const BEGINS_AS_QUESTION =
  /^\s*(?:is|are|do|does|did|has|have|can|could|would|should|ist|sind|war|waren|hat|haben|kann|können|gibt es|est-ce qu|a-t-|y a-t-il)/iu;

/** Words that ask for something, first in a question: English, German, French, Spanish, Italian, Portuguese, Dutch, Polish, Russian, Greek, Arabic, Hebrew. */
const ASKING = folded(
  "what what's which who whom whose where when why how wer wie wo wann warum weshalb welche welcher welches welchen welchem wem wen wessen wohin woher wieviel quel quelle quels quelles qui quoi quand ou comment combien pourquoi que qu'est qué cuál cuáles cómo quién quiénes dónde cuándo cuánto cuánta cuántos cuántas che cosa cos'è quale quali qual qual'è come chi dove quando perché quanto quanta quanti quante quais como quem onde wat welk welke wie waar wanneer hoe waarom co jak kto gdzie kiedy dlaczego jaki jaka jakie który która które что как какой какая какое какие кто где когда сколько почему чем какому каком какую τι ποιος ποια ποιο που ποτε πως γιατι ما ماذا من اين متى كيف كم لماذا מה מי איפה מתי איך כמה למה",
);
/** Words that may stand before one of these. */
const BEFORE = folded(
  "in on at to from by of for with under after through and und auf an mit von zu aus unter à de en dans sur par avec a con por da di w z na в на из по с о",
);
/** Words that ask for something wherever they stand: Chinese, Japanese, Korean, Hindi, Thai, Turkish. */
const ASKING_ANYWHERE =
  /什么|什麼|哪|谁|誰|多少|几|幾|怎么|怎麼|如何|为什么|何|どれ|どの|どこ|いつ|どう|なぜ|どんな|どちら|무엇|뭐|어느|어디|언제|누구|몇|어떻게|कौन|कहाँ|कब|कैसे|कितन|क्यों|อะไร|ไหน|ใคร|เมื่อไร|อย่างไร|กี่|ทำไม|(?<!\p{L})(?:nedir|kimdir|nerede|kaç|hangi|nasıl)(?!\p{L})/iu;

/** No is nobelium, Si silicon, and true the opposite of false: English, German, French, Spanish, Italian. */
const OF_SIGNS =
  /(?<!\p{L})(?:symbols?|signs?|abbreviation|opposite|symbole|abkürzung|elementsymbol|gegenteil|abréviation|contraire|símbolo|abreviatura|contrario|simbolo|abbreviazione)(?!\p{L})/iu;

/** Whether an answer is yes or no, right or wrong, in one of the languages that are known. */
export const isYesNo = (answer: string): boolean => YES_NO.has(firstClause(answer));

const firstClause = (answer: string): string => foldText(answer.split(/[,;.:!，。、،؛]|\s[–—-]\s/u)[0] ?? "").trim();

/** `yes-no`: the answer is yes or no. */
export const yesNo = (fact: Fact, asked: readonly Asked[]): readonly Remark[] =>
  asked.flatMap(({ angle, prompt, answer }): readonly Remark[] => {
    if (angle === "reverse" || !isDecision(prompt, answer, fact.language)) return [];
    const said = answer.length > 30 ? firstClause(answer) : answer;
    const message = `The answer is “${said}”. Ask which, what or when instead.`;
    return [{ rule: "yes-no", angle, message, about: `${prompt}\n${answer}`, fix: null }];
  });

function isDecision(prompt: string, answer: string, language: string): boolean {
  const first = firstClause(answer);
  if (TRUE_OR_FALSE.test(prompt)) return YES_NO.has(first);
  // A sentence is put down, to be called true or false.
  if (TRUTH.has(first) && /[.。]$/u.test(prompt) && wordsOf(prompt).length > 2) return true;
  if (!QUESTION.test(prompt) && !BEGINS_AS_QUESTION.test(prompt)) return false;
  const [word = ""] = wordsOf(foldText(answer));
  const negated = /^no (?:it|they|he|she|there|not)(?!\p{L})/iu.test(answer);
  return (YES_NO.has(first) || CERTAIN.has(word) || negated) && !asksForSomething(prompt, language);
}

/** "What is the symbol of nobelium?" is answered by No, and decides nothing. */
function asksForSomething(prompt: string, language: string): boolean {
  if (ASKING_ANYWHERE.test(prompt) || (OF_SIGNS.test(prompt) && !BEGINS_AS_QUESTION.test(prompt))) return true;
  return prompt.split(/[.:;!?？¿؟–—]\s*/u).some((part) => {
    const [first = "", second = ""] = wordsOf(foldText(part));
    if (first === "was") return languageOf(prompt, language) === "de";
    return ASKING.has(first) || (BEFORE.has(first) && ASKING.has(second));
  });
}
