// The one vocabulary of expected failures, and what each means to a browser and to a shell.

/** Why something could not be done. */
export type FailureKind = "invalid-input" | "not-found" | "conflict" | "in-use" | "too-large" | "stopped" | "storage";

/** An expected failure: its kind, and words for the person. */
export interface Failure {
  readonly kind: FailureKind;
  readonly message: string;
}

/** HTTP status and exit status of each kind. */
export const FAILURE_CODES: Readonly<
  Record<FailureKind, { readonly http: 404 | 409 | 413 | 422 | 507; readonly exit: 1 | 2 }>
> = {
  "invalid-input": { http: 422, exit: 2 },
  "not-found": { http: 404, exit: 1 },
  conflict: { http: 409, exit: 1 },
  "in-use": { http: 409, exit: 1 },
  "too-large": { http: 413, exit: 1 },
  stopped: { http: 409, exit: 1 },
  storage: { http: 507, exit: 1 },
};

/**
 * Carries a failure out of a transaction, so that it is rolled back; the edges turn it into a status.
 * Anything else that is thrown is a bug.
 */
export class FailureError extends Error {
  readonly failure: Failure;
  constructor(kind: FailureKind, message: string) {
    super(message);
    this.name = "FailureError";
    this.failure = { kind, message };
  }
}

/** The value, or a failure of kind `not-found` naming what is missing. */
export function found<T>(value: T | undefined | null, what: string): T {
  if (value === undefined || value === null) throw new FailureError("not-found", `There is no such ${what}.`);
  return value;
}
