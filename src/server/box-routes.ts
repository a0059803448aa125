// Today, the sitting, the log and the box.
import { cardHistory, cardsInPlace, drawerView, readCards } from "../app/box-view.ts";
import { changeChart } from "../app/change-chart.ts";
import { planView } from "../app/plan-view.ts";
import type { Context } from "../app/ports.ts";
import { recordEntries, type SentEntry } from "../app/record.ts";
import { changeSettings, setUpBox } from "../app/set-up.ts";
import { beginSitting, lookAhead } from "../app/sit.ts";
import { todayView } from "../app/today.ts";
import { type Api, idParam, route } from "./api-kit.ts";
import {
  beginSchema,
  boxCardsQuerySchema,
  cardIdsSchema,
  changeChartSchema,
  logSchema,
  settingsSchema,
  setUpSchema,
} from "./schemas.ts";

const routes = {
  today: route({ method: "get", path: "/api/today", answer: "TodayView: what to do now, and how long it will take" }),
  plan: route({
    method: "get",
    path: "/api/plan",
    answer: "PlanView: the box as it is, from which loads are worked out",
  }),
  setUp: route({
    method: "post",
    path: "/api/box",
    answer: "BoxView: the box that was set up, or that there was",
    body: setUpSchema,
  }),
  settings: route({
    method: "patch",
    path: "/api/box",
    answer: "BoxView: the box after the change",
    body: settingsSchema,
  }),
  chart: route({
    method: "put",
    path: "/api/box/chart",
    answer: "ChartChange: the box by its new chart, what takes the change back, and how many cards were moved",
    body: changeChartSchema,
  }),
  drawer: route({ method: "get", path: "/api/box", answer: "DrawerView: the box from above" }),
  cards: route({ method: "get", path: "/api/box/cards", answer: "Page of PlacedCard", query: boxCardsQuerySchema }),
  card: route({
    method: "get",
    path: "/api/cards/{id}",
    answer: "CardHistory: a card and all that happened to it",
    params: idParam,
  }),
  readCards: route({
    method: "post",
    path: "/api/cards/read",
    answer: "cards: both sides of each card that exists",
    body: cardIdsSchema,
  }),
  begin: route({
    method: "post",
    path: "/api/sitting",
    answer: "SittingView: a sitting begun or resumed",
    body: beginSchema,
  }),
  ahead: route({ method: "get", path: "/api/sitting/ahead", answer: "AheadView: what the next practice day asks" }),
  log: route({
    method: "post",
    path: "/api/log",
    answer: "receipts: what became of each entry; saved means durable",
    body: logSchema,
  }),
};

/** The time zone of this machine, used before a box says otherwise. */
export const machineTimeZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Adds the routes of the box. */
export function addBoxRoutes(api: Api, context: Context): void {
  api.openapi(routes.today, async (c) => c.json(await todayView(context, machineTimeZone())));
  api.openapi(routes.plan, async (c) => c.json(await planView(context, machineTimeZone())));
  api.openapi(routes.setUp, async (c) => c.json(await setUpBox(context, c.req.valid("json"))));
  api.openapi(routes.settings, async (c) => c.json(await changeSettings(context, c.req.valid("json"))));
  api.openapi(routes.chart, async (c) => c.json(await changeChart(context, c.req.valid("json"))));
  api.openapi(routes.drawer, async (c) => c.json(await drawerView(context)));
  api.openapi(routes.cards, async (c) => c.json(await cardsInPlace(context, c.req.valid("query"))));
  api.openapi(routes.ahead, async (c) => c.json(await lookAhead(context)));
  api.openapi(routes.readCards, async (c) => c.json({ cards: await readCards(context, c.req.valid("json").ids) }));
  api.openapi(routes.card, async (c) => c.json(await cardHistory(context, c.req.valid("param").id)));
  api.openapi(routes.begin, async (c) => {
    const { id, newCards } = c.req.valid("json");
    return c.json(await beginSitting(context, id, newCards));
  });
  api.openapi(routes.log, async (c) =>
    c.json({ receipts: await recordEntries(context, c.req.valid("json").entries as readonly SentEntry[]) }),
  );
}
