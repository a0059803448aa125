// The next step after the first fact.
import { Link } from "wouter";
import { useToday } from "../data/queries.ts";

/** Leads to setting up the box while there are facts and no box; nothing otherwise. */
export function NoBoxYet() {
  const today = useToday().data;
  if (!today || today.box || today.facts === 0) return null;
  return (
    <p className="trouble calm">
      Your cards have no box yet.{" "}
      <Link href="/" className="button">
        Set up the box
      </Link>
    </p>
  );
}
