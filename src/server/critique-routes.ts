// The critique of a subject and of its facts.
import { bringBackNotes, type Critic, waveOff } from "../app/critique.ts";
import type { Context } from "../app/ports.ts";
import { type Api, idParam, route } from "./api-kit.ts";
import { noteKeysSchema } from "./schemas.ts";

const routes = {
  counts: route({
    method: "get",
    path: "/api/subjects/{id}/critique",
    answer: "rules: list of RuleCount",
    params: idParam,
  }),
  notes: route({ method: "get", path: "/api/facts/{id}/notes", answer: "FactNotes", params: idParam }),
  waveOff: route({ method: "post", path: "/api/notes/wave-off", answer: "nothing", body: noteKeysSchema }),
  bringBack: route({ method: "post", path: "/api/notes/bring-back", answer: "nothing", body: noteKeysSchema }),
};

/** Adds the routes of the critique. */
export function addCritiqueRoutes(api: Api, context: Context, critic: Critic): void {
  api.openapi(routes.counts, async (c) => c.json({ rules: await critic.counts(c.req.valid("param").id) }));
  api.openapi(routes.notes, async (c) => c.json(await critic.notesOf(c.req.valid("param").id)));
  api.openapi(routes.waveOff, async (c) => {
    await waveOff(context, c.req.valid("json").keys);
    return c.json({});
  });
  api.openapi(routes.bringBack, async (c) => {
    await bringBackNotes(context, c.req.valid("json").keys);
    return c.json({});
  });
}
