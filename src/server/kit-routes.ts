// The kit: seen sheet by sheet, made into a PDF, and what is known of the paper that is out there.
import type { z } from "@hono/zod-openapi";
import { storedPictures } from "../app/kit.ts";
import type { Context, PictureRecord } from "../app/ports.ts";
import { type KitChoices, planKit } from "../app/print-plan.ts";
import { recordMissing, recordPrinted, undoPrintStep } from "../app/print-record.ts";
import { cardPaper, factPaper, paperCards } from "../app/print-versions.ts";
import { type KitPreview, kitNotices, sheetOf } from "../app/print-views.ts";
import { coarsePictures } from "../core/kit/kit-pages.ts";
import type { KitPage } from "../core/kit/page.ts";
import type { Previewer } from "../kit/previewer.ts";
import { type Api, describeRoute, idParam, route } from "./api-kit.ts";
import { machineTimeZone } from "./box-routes.ts";
import type { KitJobs } from "./kit-jobs.ts";
import {
  kitJobSchema,
  kitPreviewSchema,
  type kitSchema,
  missingCardsSchema,
  paperCardsQuerySchema,
} from "./paper-schemas.ts";

const routes = {
  preview: route({ method: "post", path: "/api/kit/preview", answer: "KitPreview", body: kitPreviewSchema }),
  open: route({
    method: "post",
    path: "/api/kit/jobs",
    answer: "KitJobView: the making has begun",
    body: kitJobSchema,
  }),
  status: route({ method: "get", path: "/api/kit/jobs/{id}", answer: "KitJobView", params: idParam }),
  stop: route({ method: "delete", path: "/api/kit/jobs/{id}", answer: "KitJobView: stopped", params: idParam }),
  printed: route({
    method: "post",
    path: "/api/kit/jobs/{id}/printed",
    answer: "KitJobView: its cards are recorded as printed",
    params: idParam,
  }),
  paper: route({ method: "get", path: "/api/kit/paper", answer: "PaperCardsView", query: paperCardsQuerySchema }),
  cardPaper: route({ method: "get", path: "/api/cards/{id}/paper", answer: "CardPaperView", params: idParam }),
  factPaper: route({ method: "get", path: "/api/facts/{id}/paper", answer: "FactPaperView", params: idParam }),
  missing: route({ method: "post", path: "/api/kit/missing", answer: "PrintStep", body: missingCardsSchema }),
  undo: route({ method: "post", path: "/api/kit/steps/{id}/undo", answer: "PrintStep: taken back", params: idParam }),
};

/** What the routes of the kit are made of. */
export interface KitParts {
  readonly jobs: KitJobs;
  readonly previewer: Previewer;
}

/** Adds the routes of the kit. */
export function addKitRoutes(api: Api, context: Context, { jobs, previewer }: KitParts): void {
  api.openapi(routes.preview, async (c) => {
    const { kit, sheet } = c.req.valid("json");
    return c.json(await previewOf(context, previewer, choicesOf(kit), sheet));
  });
  api.openapi(routes.open, async (c) => {
    const { kit, zip } = c.req.valid("json");
    return c.json(await jobs.open(choicesOf(kit), zip));
  });
  api.openapi(routes.status, (c) => c.json(jobs.status(c.req.valid("param").id)));
  api.openapi(routes.stop, (c) => c.json(jobs.stop(c.req.valid("param").id)));
  api.openapi(routes.printed, async (c) => {
    const { id } = c.req.valid("param");
    const step = await recordPrinted(context, jobs.cards(id));
    return c.json(jobs.noteRecorded(id, step.id));
  });
  describeRoute(api, {
    method: "get",
    path: "/api/kit/jobs/{id}/file",
    answer: "the PDF, or a zip file of PDFs; ?download keeps the browser from opening it",
    gives: "application/pdf",
  });
  api.get("/api/kit/jobs/:id/file", (c) => {
    const { name, mime, bytes } = jobs.file(c.req.param("id"));
    const how = c.req.query("download") === undefined ? "inline" : "attachment";
    const disposition = `${how}; filename*=UTF-8''${encodeURIComponent(name)}`;
    return c.body(new Uint8Array(bytes), 200, { "content-type": mime, "content-disposition": disposition });
  });
  api.openapi(routes.paper, async (c) => c.json(await paperCards(context, c.req.valid("query").subjects)));
  api.openapi(routes.cardPaper, async (c) => c.json(await cardPaper(context, c.req.valid("param").id)));
  api.openapi(routes.factPaper, async (c) => c.json(await factPaper(context, c.req.valid("param").id)));
  api.openapi(routes.missing, async (c) => {
    const { kind, numbers } = c.req.valid("json");
    return c.json(await recordMissing(context, kind, numbers));
  });
  api.openapi(routes.undo, async (c) => {
    const step = await undoPrintStep(context, c.req.valid("param").id);
    jobs.noteUndone(step.id);
    return c.json(step);
  });
}

/** A kit as it came, in the words of the use case. */
function choicesOf(kit: z.output<typeof kitSchema>): KitChoices {
  const { subjects, only, parts, paper, card, turn, mark, right, down, bleed, language, days } = kit;
  const { names, nameOnCards, start } = kit;
  const pack = names.length > 0 ? { pack: { names, onCards: nameOnCards, start } } : {};
  const offset = [right, down] as const;
  return {
    ...{ subjects, card, turn, mark, language, days, offset, bleed, ...pack },
    only: names.length > 0 ? "all" : only,
    parts: new Set(parts),
    sheet: paper ?? card,
    timeZone: machineTimeZone(),
  };
}

async function previewOf(
  context: Context,
  previewer: Previewer,
  choices: KitChoices,
  wanted: number,
): Promise<KitPreview> {
  const { plan, cards } = await planKit(context, choices);
  const first = sheetOf(plan, wanted);
  const pictures = await picturesOn(context, first.pages);
  // Only with the pictures of a sheet is it known which of them fill a side.
  const { sheet, parts, pages, allPages } =
    plan.bleed > 0 && pictures.size > 0 ? sheetOf(plan, wanted, (picture) => pictures.get(picture)) : first;
  const filled = pages.filter(({ items }) => items.length > 0);
  const { title, language } = plan.style;
  const drawn =
    filled.length > 0 ? await previewer.draw({ title, language, pages: filled, pictures }) : { svgs: [], notices: [] };
  const svgs = drawn.svgs.values();
  const notices = [...drawn.notices, ...coarsePictures(pages, (picture) => pictures.get(picture))];
  return {
    pages: allPages,
    cards: cards.length,
    boxes: plan.pack?.names.length ?? 1,
    parts,
    sheet,
    size: pages[0] ? { width: pages[0].width, height: pages[0].height } : plan.sheet,
    sides: pages.map(({ items }) => (items.length > 0 ? (svgs.next().value ?? null) : null)),
    notices: kitNotices(notices, cards),
  };
}

/** The pictures that some pages show, and no others. */
function picturesOn(context: Context, pages: readonly KitPage[]): Promise<ReadonlyMap<string, PictureRecord>> {
  const hashes = pages.flatMap(({ items }) => items.flatMap((item) => (item.kind === "picture" ? [item.picture] : [])));
  return storedPictures(context, hashes);
}
