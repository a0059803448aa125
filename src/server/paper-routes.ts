// Results that come back from paper.
import { enterPaper, paperDay, previewPaper } from "../app/paper-results.ts";
import { takeBackPaper } from "../app/paper-undo.ts";
import type { Context } from "../app/ports.ts";
import { type Api, route } from "./api-kit.ts";
import { paperDaySchema, paperDaysSchema, paperQuerySchema, paperTakeBackSchema } from "./paper-schemas.ts";

const routes = {
  day: route({ method: "get", path: "/api/paper", answer: "PaperDayView", query: paperQuerySchema }),
  dayAfter: route({
    method: "post",
    path: "/api/paper/day",
    answer: "PaperDayView as it will be behind other days, nothing recorded",
    body: paperDaySchema,
  }),
  preview: route({
    method: "post",
    path: "/api/paper/preview",
    answer: "outcomes: list of PaperOutcome, nothing recorded",
    body: paperDaysSchema,
  }),
  enter: route({ method: "post", path: "/api/paper", answer: "outcomes: list of PaperOutcome", body: paperDaysSchema }),
  takeBack: route({ method: "post", path: "/api/paper/take-back", answer: "nothing", body: paperTakeBackSchema }),
};

/** Adds the routes of results from paper. */
export function addPaperRoutes(api: Api, context: Context): void {
  api.openapi(routes.day, async (c) => c.json(await paperDay(context, c.req.valid("query").date)));
  api.openapi(routes.dayAfter, async (c) => {
    const { date, before } = c.req.valid("json");
    return c.json(await paperDay(context, date, before));
  });
  api.openapi(routes.preview, async (c) => c.json({ outcomes: await previewPaper(context, c.req.valid("json").days) }));
  api.openapi(routes.enter, async (c) => c.json({ outcomes: await enterPaper(context, c.req.valid("json").days) }));
  api.openapi(routes.takeBack, async (c) => {
    await takeBackPaper(context, c.req.valid("json").sittings);
    return c.json({});
  });
}
