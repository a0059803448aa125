// Catches a page that broke, so that the rest stays usable.
import { Component, type ReactNode } from "react";

interface Props {
  readonly children: ReactNode;
}

/** Shows what to do when a page cannot be drawn. React offers this only to classes. */
export class ErrorBoundary extends Component<Props, { readonly broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError(): { readonly broken: boolean } {
    return { broken: true };
  }

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    return (
      <main className="page narrow">
        <h1>This page could not be drawn</h1>
        <p>Nothing you did is lost: answers are kept in this browser until the server has them.</p>
        <p>
          <button type="button" className="primary" onClick={() => location.reload()}>
            Load the page again
          </button>
        </p>
      </main>
    );
  }
}
