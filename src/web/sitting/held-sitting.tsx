// The way back to a sitting that was paused while the server was away.
import { useQueryClient } from "@tanstack/react-query";
import { Link } from "wouter";
import { heldSitting } from "./use-begin.ts";

/** Leads to the sitting that this page still holds; nothing if it holds none. */
export function HeldSitting() {
  if (!heldSitting(useQueryClient())) return null;
  return (
    <section className="sheet" aria-labelledby="held">
      <h2 id="held">A sitting is under way</h2>
      <p>You can go on while Longhold is away: your answers are kept in this browser.</p>
      <Link href="/sitting" className="button big primary">
        Go on with the sitting
      </Link>
    </section>
  );
}
