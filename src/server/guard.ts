// Who may talk to the box. It listens on this machine only, but any web page that is open in the same
// browser could try to reach it; so every request must name this server and come from its own pages.
import { hostname, networkInterfaces } from "node:os";
import type { MiddlewareHandler } from "hono";

/** Headers on every answer. Pages load nothing from elsewhere and cannot be framed. */
const HEADERS: Readonly<Record<string, string>> = {
  "content-security-policy":
    "default-src 'self'; img-src 'self' data: blob:; media-src 'self' blob:; style-src 'self'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; object-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "x-content-type-options": "nosniff",
  "x-frame-options": "DENY",
  "referrer-policy": "no-referrer",
  "permissions-policy": "camera=(self), microphone=(self), geolocation=(), payment=(), usb=()",
};

const refusal = (message: string): Response => Response.json({ error: "refused", message }, { status: 403 });

/**
 * Refuses requests whose Host is not one of `hosts` (a name that was pointed at this machine to get
 * round the browser's rules) and requests made by pages of another origin.
 */
export const guard =
  (hosts: () => ReadonlySet<string>): MiddlewareHandler =>
  async (c, next) => {
    const host = c.req.header("host")?.toLowerCase() ?? "";
    const origin = c.req.header("origin");
    const site = c.req.header("sec-fetch-site");
    if (!hosts().has(host)) {
      c.res = refusal(
        "This address does not belong to Longhold. Open it under the address it printed when it started.",
      );
    } else if (origin !== undefined && origin.toLowerCase() !== `http://${host}`) {
      c.res = refusal("Pages from elsewhere may not use this box.");
    } else if (c.req.path.startsWith("/api/") && site !== undefined && site !== "same-origin" && site !== "none") {
      c.res = refusal("Pages from elsewhere may not use this box.");
    } else {
      await next();
    }
    for (const [name, value] of Object.entries(HEADERS)) c.res.headers.set(name, value);
  };

/** Every name under which a server on this port may be addressed. */
export function allowedHosts(host: string, port: number): ReadonlySet<string> {
  const everywhere = host === "0.0.0.0" || host === "::";
  const own = Object.values(networkInterfaces()).flatMap((addresses = []) => addresses.map(({ address }) => address));
  const named = ["localhost", "127.0.0.1", "::1", host, ...(everywhere ? [hostname(), ...own] : [])];
  const names = new Set(named.map((name) => (name.includes(":") ? `[${name}]` : name.toLowerCase())));
  return new Set([...names].flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`])));
}
