// MathML as a browser takes it, made into what the drawing engine takes: colours and columns that stand in styles and
// classes there are attributes here (MathML 3, sections 3.1.10 and 3.5.1).

/** The markup without styles and classes; what they say of colours, columns and frames is kept. */
export const mathmlForPrint = (markup: string): string =>
  markup
    .replaceAll('<mo linebreak="newline"></mo>', "")
    .replace(LAID_OVER, "$1")
    .replace(
      /<([a-z]+)((?:\s[\w-]+="[^"]*")*)/g,
      (_, name: string, given: string) => `<${name}${attributes(name, given)}`,
    );

/** A part that is shown twice in a browser, once without being seen, so that its right edge is where it belongs. */
const LAID_OVER =
  /(<mpadded [^>]*style="position:relative;">)<mpadded width="0\.1px"><mphantom>(?:(?!<mphantom>).)*?<\/mphantom><\/mpadded>(?=<\w+[^>]* style="position:absolute)/g;

function attributes(name: string, given: string): string {
  const [style, classes] = [attribute(given, "style"), attribute(given, "class")];
  const more: string[] = [];
  const colour = /(?:^|;)color:(#[0-9a-fA-F]{3,8})/.exec(style)?.[1];
  if (colour !== undefined) more.push(` mathcolor="${colour}"`);
  // A frame is the one style that is drawn as such.
  if (name === "mrow" && style.includes("border:")) more.push(` style="${style}"`);
  const side = /\btml-(left|right)\b/.exec(classes)?.[1];
  if (name === "mtd" && side !== undefined) more.push(` columnalign="${side}"`);
  if (name === "mtable" && /\btml-jot\b/.test(classes)) more.push(' columnspacing="0.278em" rowspacing="0.3em"');
  return `${given.replace(/\s(style|class)="[^"]*"/g, "")}${more.join("")}`;
}

const attribute = (attributes: string, name: string): string =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(attributes)?.[1] ?? "";
