// What stands in for content: while it is on its way, and when it did not come.
import { type ReactNode, useEffect, useState } from "react";
import { errorWords } from "../data/queries.ts";
import { PageHeading } from "./page-heading.tsx";

const QUIET_MS = 300;

/** A quiet sketch of the page, shown only when waiting becomes noticeable. */
export function Waiting({ what }: { readonly what: string }) {
  const [shown, setShown] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setShown(true), QUIET_MS);
    return () => clearTimeout(timer);
  }, []);
  if (!shown) return null;
  return (
    <div className="waiting" role="status">
      <span className="visually-hidden">Fetching {what}</span>
      <span className="sketch wide" />
      <span className="sketch" />
      <span className="sketch short" />
    </div>
  );
}

/** An error in plain words with a way to try again. */
export function Trouble({ error, retry }: { readonly error: unknown; readonly retry?: () => void }) {
  return (
    <div className="trouble" role="alert">
      <p dir="auto">{errorWords(error)}</p>
      {retry ? (
        <button type="button" onClick={retry}>
          Try again
        </button>
      ) : null}
    </div>
  );
}

interface Asked<T> {
  readonly data: T | undefined;
  readonly error: unknown;
  readonly refetch: () => unknown;
}

/** Shows what was asked for, or a sketch, or the trouble. */
export function Loaded<T>(props: {
  readonly query: Asked<T>;
  readonly what: string;
  /** The page's heading, where it would otherwise come with the content. */
  readonly heading?: string;
  /** What can still be done when the content did not come. */
  readonly otherwise?: ReactNode;
  readonly children: (data: T) => ReactNode;
}) {
  const { query, what, heading, otherwise, children } = props;
  if (query.data !== undefined) return children(query.data);
  if (query.error) {
    return (
      <>
        {heading ? <PageHeading title={heading}>{heading}</PageHeading> : null}
        <Trouble error={query.error} retry={() => query.refetch()} />
        {otherwise}
      </>
    );
  }
  return <Waiting what={what} />;
}
