// The observatory demo, in and out.
import type { Context } from "../app/ports.ts";
import { todayView } from "../app/today.ts";
import { clearDemo, type DemoMedia, loadDemo } from "../demo/load-demo.ts";
import { type Api, route } from "./api-kit.ts";
import { machineTimeZone } from "./box-routes.ts";

const routes = {
  load: route({ method: "post", path: "/api/demo", answer: "TodayView: with the demo in an empty Longhold" }),
  clear: route({ method: "delete", path: "/api/demo", answer: "TodayView: with the demo cleared away" }),
};

/** Adds the routes of the demo. */
export function addDemoRoutes(api: Api, context: Context, media: DemoMedia): void {
  api.openapi(routes.load, async (c) => {
    await loadDemo(context, media, machineTimeZone());
    return c.json(await todayView(context, machineTimeZone()));
  });
  api.openapi(routes.clear, async (c) => {
    await clearDemo(context);
    return c.json(await todayView(context, machineTimeZone()));
  });
}
