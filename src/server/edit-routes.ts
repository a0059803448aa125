// Many facts at once, undoing, histories and duplicates.
import type { z } from "zod";
import { applyBulk, type BulkChange, MOST_AT_ONCE, previewBulk } from "../app/bulk-edit.ts";
import type { Critic } from "../app/critique.ts";
import { factHistory, recentEdits, undoEdit } from "../app/edits.ts";
import { found } from "../app/failure.ts";
import type { Context } from "../app/ports.ts";
import { findDuplicates } from "../core/facts/find-duplicates.ts";
import { type Api, idParam, route } from "./api-kit.ts";
import { factQueryOf } from "./fact-query.ts";
import { bulkSchema } from "./schemas.ts";

const routes = {
  preview: route({
    method: "post",
    path: "/api/facts/bulk/preview",
    answer: "BulkPreview: what the change would do",
    body: bulkSchema,
  }),
  bulk: route({ method: "post", path: "/api/facts/bulk", answer: "BulkResult", body: bulkSchema }),
  edits: route({ method: "get", path: "/api/edits", answer: "edits: list of EditView, newest first" }),
  undo: route({
    method: "post",
    path: "/api/edits/{id}/undo",
    answer: "EditView: the step that undid it",
    params: idParam,
  }),
  history: route({
    method: "get",
    path: "/api/facts/{id}/history",
    answer: "versions: list of FactVersion, newest first",
    params: idParam,
  }),
  duplicates: route({
    method: "get",
    path: "/api/subjects/{id}/duplicates",
    answer: "groups: lists of Fact that say the same",
    params: idParam,
  }),
  tags: route({
    method: "get",
    path: "/api/subjects/{id}/tags",
    answer: "tags: list of tag and count, most used first",
    params: idParam,
  }),
};

const MOST_GROUPS = 200;

/** Adds the routes for editing at scale. */
export function addEditRoutes(api: Api, context: Context, critic: Critic): void {
  api.openapi(routes.preview, async (c) => {
    const { chosen, change } = c.req.valid("json");
    return c.json(await previewBulk(context, await factsOf(context, critic, chosen), change as BulkChange));
  });
  api.openapi(routes.bulk, async (c) => {
    const { chosen, change } = c.req.valid("json");
    return c.json(await applyBulk(context, await factsOf(context, critic, chosen), change as BulkChange));
  });
  api.openapi(routes.edits, async (c) => c.json({ edits: await recentEdits(context) }));
  api.openapi(routes.undo, async (c) => c.json(await undoEdit(context, c.req.valid("param").id)));
  api.openapi(routes.history, async (c) => c.json({ versions: await factHistory(context, c.req.valid("param").id) }));
  api.openapi(routes.duplicates, async (c) => {
    const { id } = c.req.valid("param");
    const groups = await context.store.read(async ({ library }) => {
      found(await library.subject(id), "subject");
      return findDuplicates(library.eachFact(id));
    });
    return c.json({ groups: groups.slice(0, MOST_GROUPS), total: groups.length });
  });
  api.openapi(routes.tags, async (c) => {
    const tags = await context.store.read(({ library }) => library.tagsOf(c.req.valid("param").id));
    return c.json({ tags: [...tags].map(([tag, count]) => ({ tag, count })) });
  });
}

/** The facts that a person chose: by name, or all that fit a search. */
async function factsOf(
  context: Context,
  critic: Critic,
  chosen: z.infer<typeof bulkSchema>["chosen"],
): Promise<readonly string[]> {
  if ("facts" in chosen) return chosen.facts;
  // One more than may be changed, so that too many are noticed.
  const query = await factQueryOf(critic, { ...chosen.fitting, limit: MOST_AT_ONCE + 1 });
  return context.store.read(({ library }) => library.findFactIds(query));
}
