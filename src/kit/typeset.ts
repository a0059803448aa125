// Pages to PDF. The engine gets pages, pictures and codes as data beside a fixed template.
import { mkdtempSync, rmdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import { correction, generate } from "lean-qr";
import { toSvgSource } from "lean-qr/extras/svg";
import { leadingOf } from "../core/kit/line-heights.ts";
import type { CodeItem, KitPage, PageItem } from "../core/kit/page.ts";
import type { Size } from "../core/kit/paper.ts";
import { placePicture } from "../core/kit/place-picture.ts";
import { printableText } from "../core/kit/printable-text.ts";
import { sizeTrial, type WidthOf } from "../core/kit/size-trial.ts";
import type { DrawnFormulae } from "./draw-formulae.ts";
import { chooseFonts, type FontChoice, type TextToSet } from "./fonts.ts";
import { drawnRuns, formulaFiles, runsData } from "./formula-data.ts";
import { TEMPLATE } from "./template.ts";

/** A picture as the engine gets it: its size in dots, and the picture itself or something that stands for it. */
export interface SetPicture extends Size {
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** What is to be printed. */
export interface KitDocument {
  readonly title: string;
  /** ISO 639-1. */
  readonly language: string;
  readonly pages: readonly KitPage[];
  /** Every picture that the pages name, as PNG, JPEG or WebP. */
  readonly pictures: ReadonlyMap<string, SetPicture>;
  /** Those of the formulae that were drawn; the others are set as they were written. */
  readonly formulae?: DrawnFormulae;
}

/** A PDF, and in whole sentences what did not come out as it should. */
export interface TypesetKit {
  readonly pdf: Uint8Array;
  readonly notices: readonly string[];
}

const EXTENSIONS: Readonly<Record<string, string>> = { "image/png": "png", "image/jpeg": "jpg", "image/webp": "webp" };

/**
 * Sets pages as a tagged PDF (PDF/UA-1) with its fonts embedded; the same pages give the same bytes. Holds the thread for as long as it takes. Throws if the engine refuses, which no text of a person can bring about.
 */
export const typesetKit = (kit: KitDocument, trialOf: typeof sizeTrial = sizeTrial): TypesetKit =>
  withEngine(kit, trialOf, (setPages) => {
    const { compiler, result, notices } = setPages(kit.pages);
    return { pdf: new Uint8Array(compiler.pdf(result, { pdfStandard: "ua-1" })), notices };
  });

/** Pages as pictures (SVG), drawn as they would be printed, and in whole sentences what would not come out as it should. */
export interface DrawnPages {
  readonly svgs: readonly string[];
  readonly notices: readonly string[];
}

/** Draws each page by itself. Throws as `typesetKit` does. */
export const drawPages = (kit: KitDocument): DrawnPages =>
  withEngine(kit, sizeTrial, (setPages) => {
    const notices = new Set<string>();
    const svgs = kit.pages.map((page) => {
      const set = setPages([page]);
      for (const notice of set.notices) notices.add(notice);
      return set.compiler.plainSvg(set.result);
    });
    return { svgs, notices: [...notices] };
  });

/** Sets some of a document's pages. */
type SetPages = (pages: readonly KitPage[]) => {
  readonly compiler: NodeCompiler;
  readonly result: NonNullable<ReturnType<NodeCompiler["compile"]>["result"]>;
  readonly notices: readonly string[];
};

/** Opens the engine with everything that a document needs, and closes it behind the work. */
function withEngine<T>(kit: KitDocument, trialOf: typeof sizeTrial, work: (setPages: SetPages) => T): T {
  const fonts = chooseFonts(textsOf(kit.pages));
  const workspace = mkdtempSync(join(tmpdir(), "longhold-kit-"));
  try {
    const compiler = NodeCompiler.create({ workspace, fontArgs: [{ fontBlobs: [...fonts.blobs] }] });
    const map = (name: string, bytes: string | Uint8Array): void =>
      compiler.mapShadow(join(workspace, name), Buffer.from(bytes));
    for (const [hash, picture] of kit.pictures) map(pictureFile(hash, picture), picture.bytes);
    for (const [name, code] of codesOf(kit.pages)) map(name, drawCode(code));
    for (const [name, svg] of formulaFiles(kit.formulae)) map(name, svg);
    map("kit.typ", TEMPLATE);
    const made = work((pages) => {
      map("kit.json", JSON.stringify(toData({ ...kit, pages }, fonts, trialOf)));
      const done = compiler.compile({ mainFilePath: join(workspace, "kit.typ") });
      const { result } = done;
      if (!result)
        throw new Error(`the typesetting engine refused: ${JSON.stringify(done.takeError()?.shortDiagnostics)}`);
      const cut: readonly string[] = compiler.query(result, { selector: "<cut>", field: "value" });
      return {
        compiler,
        result,
        notices: [...fonts.notices, ...(kit.formulae?.notices ?? []), ...[...new Set(cut)].map(cutNotice)],
      };
    });
    // The engine keeps what it has made for a next time that does not come.
    compiler.evictCache(0);
    return made;
  } finally {
    rmdirSync(workspace);
  }
}

const cutNotice = (name: string): string =>
  `There is too much text in ${name}: it is cut off, even in the smallest size. Shorten it, or choose larger cards.`;

function* itemsOf(pages: readonly KitPage[]): Generator<PageItem> {
  for (const page of pages) yield* page.items;
}

function* textsOf(pages: readonly KitPage[]): Generator<TextToSet> {
  for (const item of itemsOf(pages))
    if (item.kind === "text")
      yield {
        text: item.runs.map((run) => printableText(run.text)).join(""),
        language: item.language,
        name: item.name,
      };
}

/** Every code by the name of its file. */
function codesOf(pages: readonly KitPage[]): ReadonlyMap<string, CodeItem> {
  const codes = new Map<string, CodeItem>();
  for (const item of itemsOf(pages)) if (item.kind === "code") codes.set(codeFile(item), item);
  return codes;
}

const codeFile = ({ content, quiet }: CodeItem): string => `code-${quiet}-${Buffer.from(content).toString("hex")}.svg`;

/** A QR code (ISO/IEC 18004) with correction level M and its quiet zone. */
const drawCode = ({ content, quiet }: CodeItem): string =>
  toSvgSource(generate(content, { minCorrectionLevel: correction.M }), { pad: quiet });

const pictureFile = (hash: string, { mime }: SetPicture): string => `${hash}.${EXTENSIONS[mime]}`;

function toData(kit: KitDocument, fonts: FontChoice, trialOf: typeof sizeTrial): unknown {
  const set = (text: string, language: string): string => fonts.settable(printableText(text), language);
  const item = (one: PageItem): unknown => {
    if (one.kind === "text") {
      const longest = set(one.longest, one.language);
      const runs = drawnRuns(one.runs, kit.formulae).map((run) => ({ ...run, text: set(run.text, one.language) }));
      const widthOf: WidthOf = (text, strong) => fonts.widthOf(text, one.language, strong);
      const trial = trialOf({ ...one, longest, runs }, widthOf);
      return {
        ...one,
        longest,
        runs: runsData(runs, widthOf),
        fonts: fonts.familiesFor(one.language),
        leading: leadingOf(one.language),
        trial,
      };
    }
    if (one.kind === "picture") {
      const picture = kit.pictures.get(one.picture);
      if (!picture) throw new Error(`no bytes for the picture ${one.picture}`);
      return { ...one, file: `/${pictureFile(one.picture, picture)}`, image: placePicture(one, picture) };
    }
    if (one.kind === "code") {
      const image = { x: 0, y: 0, width: one.width, height: one.height };
      return { ...one, kind: "picture", file: `/${codeFile(one)}`, image, region: null };
    }
    return one;
  };
  const pages = kit.pages.map((page) => ({ ...page, items: page.items.map(item) }));
  return { title: printableText(kit.title), language: kit.language, fonts: fonts.familiesFor(kit.language), pages };
}
