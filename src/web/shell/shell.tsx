// What surrounds every page: the name, the ways to the pages, notices and the caution.
import { type ReactNode, useEffect, useRef } from "react";
import { Link, useLocation } from "wouter";
import { useRefresh, useToday } from "../data/queries.ts";
import { KeptHere } from "../outbox/kept-here.tsx";
import { DemoBanner } from "./demo-banner.tsx";
import { useFocusRescue } from "./focus-rescue.ts";
import { ServerGone } from "./server-gone.tsx";
import { ThemeChoice } from "./theme-choice.tsx";

const PAGES = [
  { to: "/", name: "Today" },
  { to: "/workshop", name: "Workshop" },
  { to: "/box", name: "Box" },
  { to: "/plan", name: "Plan" },
  { to: "/kit", name: "Kit" },
] as const;

const isHere = (location: string, to: string): boolean => (to === "/" ? location === "/" : location.startsWith(to));

/** Header, page, footer. */
export function Shell({ children }: { readonly children: ReactNode }) {
  const [location] = useLocation();
  const today = useToday();
  const refresh = useRefresh();
  const main = useRef<HTMLElement>(null);
  useFocusRescue(main);
  useEffect(() => {
    if (location) window.scrollTo({ top: 0 });
  }, [location]);
  return (
    <>
      <button type="button" className="skip" onClick={() => main.current?.focus()}>
        Skip to the page
      </button>
      <header className="masthead">
        <div className="masthead-row">
          <Link href="/" className="wordmark">
            <Mark />
            Longhold
          </Link>
          <nav aria-label="Pages">
            {PAGES.map(({ to, name }) => (
              <Link
                key={to}
                href={to}
                aria-current={isHere(location, to) ? "page" : undefined}
                // Going where one is asks for the latest.
                onClick={() => void (location === to && refresh())}
              >
                {name}
              </Link>
            ))}
          </nav>
        </div>
        <div className="ruler-edge" aria-hidden="true" />
      </header>
      {today.data?.demo ? <DemoBanner /> : null}
      <ServerGone />
      <KeptHere className="server-gone" />
      <main ref={main} tabIndex={-1} className="page">
        {children}
      </main>
      <footer className="foot">
        <p>Memory does not replace current official sources, local rules and licensed practice.</p>
        <ThemeChoice />
      </footer>
    </>
  );
}

function Mark() {
  return (
    <svg className="mark" viewBox="0 0 32 32" aria-hidden="true">
      <path d="M4 27V20M10 27V13M16 27V4M22 27V13M28 27V20" />
    </svg>
  );
}
