// Bringing a list: handed over, previewed, accepted, watched, stopped.
import { FailureError } from "../app/failure.ts";
import { openParcel } from "../exchange/import-list.ts";
import { type MediaReaders, usableMedia } from "../exchange/list-media.ts";
import { MAX_LIST_BYTES } from "../exchange/read-list.ts";
import { type Api, describeRoute, idParam, route } from "./api-kit.ts";
import type { ImportJobs } from "./import-jobs.ts";
import { acceptImportSchema, importChoicesSchema } from "./schemas.ts";

const routes = {
  preview: route({
    method: "post",
    path: "/api/imports/{id}/preview",
    answer: "ImportPreview; nothing is saved",
    params: idParam,
    body: importChoicesSchema,
  }),
  accept: route({
    method: "post",
    path: "/api/imports/{id}/accept",
    answer: "ImportStatus: saving has begun",
    params: idParam,
    body: acceptImportSchema,
  }),
  status: route({ method: "get", path: "/api/imports/{id}", answer: "ImportStatus", params: idParam }),
  stop: route({
    method: "delete",
    path: "/api/imports/{id}",
    answer: "ImportStatus: stopped or put away, nothing saved",
    params: idParam,
  }),
};

/** Pictures and sounds that may come with one list. */
const MOST_FILES = 1_000;

/** Adds the routes of imports. */
export function addImportRoutes(api: Api, jobs: ImportJobs, readers: MediaReaders): void {
  describeRoute(api, {
    method: "post",
    path: "/api/imports",
    answer: "ImportStatus: a list (field list), its pictures and sounds (fields files), not read yet",
    takes: "multipart/form-data",
    gives: "application/json",
  });
  api.post("/api/imports", async (c) => {
    const form = await c.req.formData().catch(() => null);
    const list = form?.get("list");
    if (!form || list === null || list === undefined) {
      throw new FailureError("invalid-input", "No list came with the request. Paste a list or choose a file.");
    }
    const sent = typeof list === "string" ? new TextEncoder().encode(list) : new Uint8Array(await list.arrayBuffer());
    const { list: bytes, files: packed } = await openParcel(sent);
    if (bytes.length > MAX_LIST_BYTES)
      throw new FailureError("too-large", "The list is larger than 64 MB. Divide it into smaller lists.");
    const beside = form.getAll("files").filter((part) => typeof part !== "string");
    const named = await Promise.all(
      beside.map(async (part) => [part.name, new Uint8Array(await part.arrayBuffer())] as const),
    );
    const files = [...packed, ...named];
    if (files.length > MOST_FILES) {
      throw new FailureError("too-large", `At most ${MOST_FILES} pictures and sounds can come with one list.`);
    }
    return c.json(jobs.open(bytes, await usableMedia(files, readers)));
  });
  api.openapi(routes.preview, async (c) => c.json(await jobs.preview(c.req.valid("param").id, c.req.valid("json"))));
  api.openapi(routes.accept, (c) => {
    const { choices, subject, oneWay } = c.req.valid("json");
    return c.json(jobs.accept(c.req.valid("param").id, choices, { target: subject, oneWay }));
  });
  api.openapi(routes.status, (c) => c.json(jobs.status(c.req.valid("param").id)));
  api.openapi(routes.stop, (c) => c.json(jobs.stop(c.req.valid("param").id)));
}
