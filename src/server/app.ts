// The HTTP side of Longhold: guard, routes, pages, and one place where failures become answers.
import { OpenAPIHono } from "@hono/zod-openapi";
import type { Context as HonoContext } from "hono";
import { bodyLimit } from "hono/body-limit";
import { createCritic } from "../app/critique.ts";
import { FAILURE_CODES, FailureError } from "../app/failure.ts";
import type { Context } from "../app/ports.ts";
import type { normalisePicture } from "../media/normalise-picture.ts";
import { storeSound } from "../media/store-sound.ts";
import { addBoxRoutes } from "./box-routes.ts";
import { addCalendarRoutes } from "./calendar-routes.ts";
import { critiqueApart } from "./critique-apart.ts";
import { addCritiqueRoutes } from "./critique-routes.ts";
import { addDemoRoutes } from "./demo-routes.ts";
import { addEditRoutes } from "./edit-routes.ts";
import { guard } from "./guard.ts";
import type { ImportJobs } from "./import-jobs.ts";
import { addImportRoutes } from "./import-routes.ts";
import { addKitRoutes, type KitParts } from "./kit-routes.ts";
import { addLibraryRoutes } from "./library-routes.ts";
import type { Log } from "./logging.ts";
import { pages } from "./pages.ts";
import { addPaperRoutes } from "./paper-routes.ts";
import { addSoundRoutes } from "./sound-routes.ts";

/** What the HTTP side is made of. */
export interface AppParts {
  readonly context: Context;
  readonly jobs: ImportJobs;
  readonly kits: KitParts;
  readonly normalise: typeof normalisePicture;
  readonly log: Log;
  readonly hosts: () => ReadonlySet<string>;
  /** Folder of the built pages. */
  readonly webFolder: string;
  readonly version: string;
}

/** Largest request: a list of 64 MB with its pictures and sounds. */
const MAX_REQUEST = 256 * 1024 * 1024;

/** Puts the HTTP side together. */
export function createApp({ context, jobs, kits, normalise, log, hosts, webFolder, version }: AppParts): OpenAPIHono {
  const media = { picture: normalise, sound: storeSound };
  const api = new OpenAPIHono({
    defaultHook: (result, c) => {
      if (result.success) return;
      const issues = result.error.issues.map((issue) => ({ path: issue.path.join("."), message: issue.message }));
      const first = issues[0];
      const where = first?.path ? `“${first.path}” ${first.message}` : (first?.message ?? "");
      return c.json({ error: "invalid-input", message: `This cannot be accepted: ${where}.`, issues }, 422);
    },
  });
  api.use(guard(hosts));
  api.use(async (c, next) => {
    const begun = performance.now();
    await next();
    log("info", "request", {
      method: c.req.method,
      path: c.req.routePath,
      status: c.res.status,
      ms: Math.round(performance.now() - begun),
    });
  });
  api.use(
    "/api/*",
    bodyLimit({
      maxSize: MAX_REQUEST,
      onError: (c) => c.json({ error: "too-large", message: "The request is larger than 256 MB." }, 413),
    }),
  );
  api.use("/api/*", async (c, next) => {
    await next();
    if (!c.res.headers.has("cache-control")) c.res.headers.set("cache-control", "no-store");
  });
  addBoxRoutes(api, context);
  const critic = createCritic(context, critiqueApart);
  addLibraryRoutes(api, context, critic, normalise);
  addEditRoutes(api, context, critic);
  addSoundRoutes(api, context);
  addPaperRoutes(api, context);
  addKitRoutes(api, context, kits);
  addCritiqueRoutes(api, context, critic);
  addImportRoutes(api, jobs, media);
  addDemoRoutes(api, context, media);
  api.doc31("/api/openapi.json", {
    openapi: "3.1.0",
    info: { title: "Longhold", version, description: "The card box on this machine." },
  });
  api.all("/api/*", (c) => c.json({ error: "not-found", message: "There is no such address in the API." }, 404));
  addCalendarRoutes(api, context);
  api.use(pages(webFolder));
  api.onError((error, c) => answerError(error, c, log));
  return api;
}

/** The one place where what was thrown becomes an answer. */
function answerError(error: Error, c: HonoContext, log: Log): Response {
  if (error instanceof FailureError) {
    return c.json(
      { error: error.failure.kind, message: error.failure.message },
      FAILURE_CODES[error.failure.kind].http,
    );
  }
  // Malformed JSON is refused by the framework itself with a response of its own.
  if ("getResponse" in error && typeof error.getResponse === "function") {
    const status = (error.getResponse() as Response).status;
    return c.json({ error: "invalid-input", message: "The request is not valid JSON." }, status === 415 ? 415 : 422);
  }
  if (c.req.raw.signal.aborted) {
    log("info", "given-up", { path: c.req.routePath });
    return c.body(null, 499 as never);
  }
  log("error", "bug", { path: c.req.routePath, message: error.stack ?? error.message });
  return c.json({ error: "bug", message: "Something went wrong inside Longhold. Nothing was changed." }, 500);
}
