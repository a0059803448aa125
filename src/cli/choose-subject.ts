// Which subject a verb is about.
import { FailureError } from "../app/failure.ts";
import type { Call } from "./verb.ts";

/** The subject named by --subject, or the only one. Fails with `not-found`, or as bad usage where several could be meant. */
export function chooseSubject(call: Call, subjects: readonly { readonly id: string; readonly name: string }[]): string {
  const name = call.values.subject;
  const [only, second] = subjects;
  const chosen =
    typeof name === "string" ? subjects.find((subject) => subject.name === name) : second ? undefined : only;
  if (chosen) return chosen.id;
  const list = subjects.map((subject) => `“${subject.name}”`).join(", ") || "none yet";
  throw typeof name === "string"
    ? new FailureError("not-found", `There is no subject “${name}”. The subjects are: ${list}.`)
    : call.usage(`name one with --subject; the subjects are: ${list}`);
}
