// Works out what the columns of a list hold: from their names if the first row has names we know,
// else from what is in the cells. When unsure a column is left out; the person decides.
import { COLUMNS, type Column } from "../app/views.ts";
import { kindNamed } from "./read-content.ts";

/** Whether the first row names the columns, and what each column holds (null: left out). */
export interface ColumnGuess {
  readonly header: boolean;
  readonly columns: readonly (Column | null)[];
}

/** How many rows are looked at. */
export const GUESS_ROWS = 50;

/** Names for columns besides our own; English, German, French and Spanish, written without accents. */
const SYNONYMS: Readonly<Record<Column, string>> = {
  prompt:
    "question questions term terms word words cue frage begriff wort vokabel ausdruck terme mot pregunta termino palabra",
  answer:
    "answers meaning meanings definition definitions translation solution antwort bedeutung ubersetzung losung " +
    "reponse sens signification traduction respuesta significado definicion traduccion",
  statement: "statements sentence sentences fact facts satz aussage phrase enonce fait frase oracion enunciado hecho",
  note:
    "notes comment comments remark remarks notiz anmerkung bemerkung kommentar remarque commentaire " +
    "nota notas comentario observacion",
  source: "sources reference references quelle beleg fuente referencia",
  picture: "pictures image images photo photograph drawing bild foto abbildung dessin imagen dibujo",
  story: "stories geschichte histoire historia",
  tags:
    "tag topic topics label labels keyword keywords category thema schlagwort schlagworter stichwort " +
    "theme etiquette etiquettes categorie etiqueta etiquetas tema categoria",
  kind: "",
  list: "items liste lista",
  formula: "formel formule",
  spelling: "schreibung rechtschreibung orthographe ortografia",
  accents: "",
  capitals: "",
  regions: "",
  why: "warum pourquoi",
  language: "sprache langue idioma",
  "picture description": "",
  "picture source": "",
  "picture licence": "",
  sound: "audio recording ton aufnahme son sonido",
  angles: "",
};

/** Names that mean the answer, or the prompt where another column is the answer. */
const EITHER_SIDE = new Set(["name", "names", "namen", "nom", "nombre"]);

const COLUMN_BY_NAME: ReadonlyMap<string, Column> = new Map(
  COLUMNS.flatMap((column) =>
    [column, ...SYNONYMS[column].split(" ").filter((name) => name !== "")].map((name): [string, Column] => [
      name,
      column,
    ]),
  ),
);

const PICTURE_FILE = /^[^/\\:]+\.(?:png|jpe?g|webp|gif|avif|svg|tiff?)$/iu;
const GAP = /\[[^[\]]+\]/u;
const LONGEST_NAME = 40;

/** The column that a cell of a header names, in any case and with or without accents; null if none that we know. */
export function columnNamed(name: string): Column | null {
  const plain = plainName(name);
  return EITHER_SIDE.has(plain) ? "answer" : (COLUMN_BY_NAME.get(plain) ?? null);
}

/** Guesses header and columns from the first rows of a list; `header` overrules the first half of the guess. */
export function guessColumns(rows: readonly (readonly string[])[], header?: boolean): ColumnGuess {
  const looked = rows.slice(0, GUESS_ROWS);
  const first = looked[0] ?? [];
  const named = columnsFromNames(first);
  const hasHeader = header ?? isHeader(first, named);
  const body = hasHeader ? looked.slice(1) : looked;
  const width = hasHeader ? first.length : Math.max(0, ...looked.map((row) => row.length));
  const columns = Array.from({ length: width }, (_, i) => (hasHeader ? (named[i] ?? null) : null));
  leaveOtherKinds(columns, body);
  if (!isEnough(columns)) fillFromCells(columns, body, !hasHeader);
  return { header: hasHeader, columns };
}

const plainName = (name: string): string =>
  name
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/^[\s\ufeff]+|[\s:]+$/gu, "");

function columnsFromNames(names: readonly string[]): (Column | null)[] {
  const columns: (Column | null)[] = names.map(() => null);
  const place = (i: number, column: Column | null): void => {
    if (column !== null && !columns.includes(column)) columns[i] = column;
  };
  names.forEach((name, i) => {
    if (!EITHER_SIDE.has(plainName(name))) place(i, columnNamed(name));
  });
  names.forEach((name, i) => {
    if (EITHER_SIDE.has(plainName(name))) place(i, columns.includes("answer") ? "prompt" : "answer");
  });
  return columns;
}

/**
 * A header is short, names no side of a card twice (a learner's first row may well be "question, Frage"), and at least
 * half of its cells are names that we know, among them one that a fact needs.
 */
function isHeader(first: readonly string[], named: readonly (Column | null)[]): boolean {
  const filled = first.filter((cell) => cell.trim() !== "");
  if (filled.some((cell) => cell.length > LONGEST_NAME || GAP.test(cell))) return false;
  const known = named.filter((column) => column !== null);
  const said = filled.map(columnNamed).filter((column) => isSide(column));
  const twice = said.length > known.filter(isSide).length;
  const needed = known.some((column) => isSide(column) || NEEDED.has(column));
  return !twice && needed && known.length * 2 >= filled.length;
}

/** Columns besides the sides of a card that tell what there is to learn. */
const NEEDED: ReadonlySet<Column> = new Set(["picture", "sound", "list", "formula", "spelling", "regions"]);

const isSide = (column: Column | null): boolean => column === "prompt" || column === "answer" || column === "statement";

function isEnough(columns: readonly (Column | null)[]): boolean {
  const has = (column: Column): boolean => columns.includes(column);
  const alone: readonly Column[] = ["statement", "list", "formula", "spelling", "regions"];
  if (alone.some(has)) return true;
  const named = has("prompt") || has("answer");
  return (has("prompt") && has("answer")) || (named && (has("picture") || has("sound")));
}

/** A column named "kind" is often about something else than our kinds of facts. */
function leaveOtherKinds(columns: (Column | null)[], rows: readonly (readonly string[])[]): void {
  const at = columns.indexOf("kind");
  if (at >= 0 && rows.some((row) => kindNamed(row[at] ?? "") === undefined)) columns[at] = null;
}

/** Gives the columns that have no meaning yet one, as far as their cells show it. */
function fillFromCells(columns: (Column | null)[], rows: readonly (readonly string[])[], notes: boolean): void {
  const has = (column: Column): boolean => columns.includes(column);
  const cellsOf = (i: number): string[] => rows.map((row) => row[i]?.trim() ?? "").filter((cell) => cell !== "");
  const open = columns.flatMap((column, i) => (column === null && cellsOf(i).length > 0 ? [i] : []));
  const take = (i: number | undefined, column: Column): void => {
    if (i === undefined || has(column)) return;
    columns[i] = column;
    open.splice(open.indexOf(i), 1);
  };
  const mostly = (pattern: RegExp) => (i: number) => {
    const cells = cellsOf(i);
    return cells.filter((cell) => pattern.test(cell)).length * 2 > cells.length;
  };
  take(open.find(mostly(PICTURE_FILE)), "picture");
  if (!has("prompt") && !has("answer")) take(open.find(mostly(GAP)), "statement");
  if (!has("statement")) {
    const alone = open.length === 1 && !has("prompt") && !has("answer");
    if (alone) take(open[0], has("picture") ? "answer" : "statement");
    else for (const side of ["prompt", "answer"] as const) take(open[0], side);
  }
  if (notes) take(open[0], "note");
}
