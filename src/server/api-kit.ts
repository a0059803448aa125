// How routes are described, so that each reads as: method, path, input, what it does.
import { createRoute, type OpenAPIHono, z } from "@hono/zod-openapi";
import type { ZodType } from "zod";

/** The API under construction. */
export type Api = OpenAPIHono;

/** The body of every failed request. */
export const errorSchema = z
  .object({
    error: z.string(),
    message: z.string(),
    issues: z.array(z.object({ path: z.string(), message: z.string() })).optional(),
  })
  .openapi("Failure");

const failures = {
  403: { description: "The request came from elsewhere." },
  404: { description: "There is no such thing.", content: { "application/json": { schema: errorSchema } } },
  409: { description: "It contradicts what is there.", content: { "application/json": { schema: errorSchema } } },
  413: { description: "It is too large.", content: { "application/json": { schema: errorSchema } } },
  422: {
    description: "The input is not valid; says where and why.",
    content: { "application/json": { schema: errorSchema } },
  },
} as const;

/** Describes a route. `answer` says what a good answer holds, in the words of the read models. */
export function route<
  M extends "get" | "post" | "put" | "patch" | "delete",
  P extends string,
  Params extends z.ZodObject = z.ZodObject<Record<never, never>>,
  Query extends z.ZodObject = z.ZodObject<Record<never, never>>,
  Body extends ZodType = ZodType<unknown>,
>(spec: { method: M; path: P; answer: string; params?: Params; query?: Query; body?: Body }) {
  const { method, path, answer, params, query, body } = spec;
  return createRoute({
    method,
    path,
    summary: answer,
    request: {
      params: (params ?? z.object({})) as Params,
      query: (query ?? z.object({})) as Query,
      ...(body ? { body: { required: true, content: { "application/json": { schema: body } } } } : {}),
    } as { params: Params; query: Query; body: { required: true; content: { "application/json": { schema: Body } } } },
    responses: { 200: { description: answer, content: { "application/json": { schema: z.any() } } }, ...failures },
  });
}

/** Path parameter `id`. */
export const idParam = z.object({
  id: z
    .string()
    .min(1)
    .max(120)
    .openapi({ param: { name: "id", in: "path" } }),
});

/** Describes a route whose input or answer is not JSON; its handler is added in the plain way. */
export function describeRoute(
  api: Api,
  spec: { method: "get" | "post"; path: string; answer: string; takes?: string; gives: string },
): void {
  const { method, path, answer, takes, gives } = spec;
  const binary = { type: "string", format: "binary" } as const;
  const names = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1] ?? "");
  api.openAPIRegistry.registerPath({
    method,
    path,
    summary: answer,
    request: {
      params: z.object(Object.fromEntries(names.map((name) => [name, z.string()]))),
      ...(takes ? { body: { required: true, content: { [takes]: { schema: binary } } } } : {}),
    },
    responses: {
      200: { description: answer, content: { [gives]: { schema: gives === "application/json" ? z.any() : binary } } },
      ...failures,
    },
  });
}
