// Subjects, facts, pictures and the export.

import type { Critic } from "../app/critique.ts";
import { freshId } from "../app/entry-ids.ts";
import {
  addFact,
  addFacts,
  addSubject,
  deleteFact,
  editFact,
  listSubjects,
  removeSubject,
  renameSubject,
  restoreFact,
} from "../app/facts.ts";
import { FailureError, found } from "../app/failure.ts";
import type { FactDraft } from "../app/number-parts.ts";
import type { Context } from "../app/ports.ts";
import { changeSubjectSpelling } from "../app/subject-spelling.ts";
import type { Angle } from "../core/facts/fact.ts";
import { exportSubject, fileName, zipExport } from "../exchange/export-subject.ts";
import type { normalisePicture } from "../media/normalise-picture.ts";
import { type Api, describeRoute, idParam, route } from "./api-kit.ts";
import { factQueryOf } from "./fact-query.ts";
import {
  editFactSchema,
  factQuerySchema,
  newFactSchema,
  newFactsSchema,
  subjectSchema,
  subjectSpellingSchema,
} from "./schemas.ts";

const routes = {
  subjects: route({ method: "get", path: "/api/subjects", answer: "subjects: list of SubjectView" }),
  addSubject: route({ method: "post", path: "/api/subjects", answer: "SubjectView", body: subjectSchema }),
  spelling: route({
    method: "put",
    path: "/api/subjects/{id}/spelling",
    answer: "SpellingChange: what counts in the subject's spellings",
    params: idParam,
    body: subjectSpellingSchema,
  }),
  removeSubject: route({
    method: "delete",
    path: "/api/subjects/{id}",
    answer: "nothing: an empty subject is removed",
    params: idParam,
  }),
  renameSubject: route({
    method: "patch",
    path: "/api/subjects/{id}",
    answer: "nothing",
    params: idParam,
    body: subjectSchema,
  }),
  facts: route({ method: "get", path: "/api/facts", answer: "Page of Fact, newest first", query: factQuerySchema }),
  fact: route({ method: "get", path: "/api/facts/{id}", answer: "Fact", params: idParam }),
  addFact: route({ method: "post", path: "/api/facts", answer: "Fact: as it was saved", body: newFactSchema }),
  addFacts: route({
    method: "post",
    path: "/api/facts/batch",
    answer: "facts: list of Fact, as they were saved together",
    body: newFactsSchema,
  }),
  editFact: route({
    method: "put",
    path: "/api/facts/{id}",
    answer: "Fact: as it was saved",
    params: idParam,
    body: editFactSchema,
  }),
  deleteFact: route({ method: "delete", path: "/api/facts/{id}", answer: "nothing", params: idParam }),
  restoreFact: route({
    method: "post",
    path: "/api/facts/{id}/restore",
    answer: "Fact: brought back",
    params: idParam,
  }),
};

/** Adds the routes of the library. */
export function addLibraryRoutes(api: Api, context: Context, critic: Critic, normalise: typeof normalisePicture): void {
  api.openapi(routes.subjects, async (c) => c.json({ subjects: await listSubjects(context) }));
  api.openapi(routes.addSubject, async (c) =>
    c.json(await addSubject(context, freshId(context), c.req.valid("json").name)),
  );
  api.openapi(routes.renameSubject, async (c) => {
    await renameSubject(context, c.req.valid("param").id, c.req.valid("json").name);
    return c.json({});
  });
  api.openapi(routes.removeSubject, async (c) => {
    await removeSubject(context, c.req.valid("param").id);
    return c.json({});
  });
  api.openapi(routes.spelling, async (c) => {
    const { following, ...rule } = c.req.valid("json");
    return c.json(await changeSubjectSpelling(context, c.req.valid("param").id, rule, following));
  });
  addFactRoutes(api, context, critic);
  addPictureRoutes(api, context, normalise);
  describeRoute(api, {
    method: "get",
    path: "/api/subjects/{id}/export",
    answer: "the subject as a CSV list, zipped if it has pictures or sounds",
    gives: "text/csv",
  });
  api.get("/api/subjects/:id/export", async (c) => {
    const result = await exportSubject(context, c.req.param("id"));
    const [name, type, body] =
      result.pictures.size + result.sounds.size > 0
        ? [`${fileName(result.name)}.zip`, "application/zip", zipExport(result)]
        : [`${fileName(result.name)}.csv`, "text/csv; charset=utf-8", new TextEncoder().encode(result.table)];
    const disposition = `attachment; filename*=UTF-8''${encodeURIComponent(name)}`;
    return c.body(new Uint8Array(body), 200, { "content-type": type, "content-disposition": disposition });
  });
}

function addFactRoutes(api: Api, context: Context, critic: Critic): void {
  api.openapi(routes.facts, async (c) => {
    const query = await factQueryOf(critic, c.req.valid("query"));
    const { items, total } = await context.store.read(({ library }) => library.findFacts(query));
    return c.json({ items, total, next: items.length === query.limit ? (items.at(-1)?.id ?? null) : null });
  });
  api.openapi(routes.fact, async (c) => {
    const record = await context.store.read(({ library }) => library.fact(c.req.valid("param").id));
    return c.json(found(record, "fact").fact);
  });
  api.openapi(routes.addFact, async (c) => {
    const { id, subject, content, angles } = c.req.valid("json");
    return c.json(await addFact(context, id, subject, content as FactDraft, angles as Angle[] | undefined));
  });
  api.openapi(routes.addFacts, async (c) => {
    const { subject, facts } = c.req.valid("json");
    return c.json({ facts: await addFacts(context, subject, facts) });
  });
  api.openapi(routes.editFact, async (c) => {
    const { content, angles } = c.req.valid("json");
    return c.json(
      await editFact(context, c.req.valid("param").id, content as FactDraft, angles as Angle[] | undefined),
    );
  });
  api.openapi(routes.deleteFact, async (c) => {
    await deleteFact(context, c.req.valid("param").id);
    return c.json({});
  });
  api.openapi(routes.restoreFact, async (c) => c.json(await restoreFact(context, c.req.valid("param").id)));
}

function addPictureRoutes(api: Api, context: Context, normalise: typeof normalisePicture): void {
  describeRoute(api, {
    method: "post",
    path: "/api/pictures",
    answer: "hash, width and height of the stored picture",
    takes: "image/*",
    gives: "application/json",
  });
  api.post("/api/pictures", async (c) => {
    const picture = await normalise(new Uint8Array(await c.req.arrayBuffer()));
    if (!picture.ok) throw new FailureError("invalid-input", picture.error);
    await context.store.write(({ library }) => library.addPicture(picture.value));
    const { hash, width, height } = picture.value;
    return c.json({ hash, width, height });
  });
  describeRoute(api, { method: "get", path: "/api/pictures/{hash}", answer: "the picture", gives: "image/*" });
  api.get("/api/pictures/:hash", async (c) => {
    const picture = found(await context.store.read(({ library }) => library.picture(c.req.param("hash"))), "picture");
    // The address is the content's own hash, so it can be kept for ever.
    return c.body(new Uint8Array(picture.bytes), 200, {
      "content-type": picture.mime,
      "cache-control": "private, max-age=31536000, immutable",
    });
  });
}
