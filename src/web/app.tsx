// The pages and where they are found.
import { QueryClientProvider } from "@tanstack/react-query";
import { lazy, Suspense } from "react";
import { Link, Route, Router, Switch } from "wouter";
import { queryClient } from "./data/queries.ts";
import { Refusals } from "./outbox/refusals.tsx";
import { Confirming } from "./shell/confirm.tsx";
import { ErrorBoundary } from "./shell/error-boundary.tsx";
import { useGuardedLocation } from "./shell/guarded-location.ts";
import { Notices } from "./shell/notices.tsx";
import { PageHeading } from "./shell/page-heading.tsx";
import { Shell } from "./shell/shell.tsx";
import { Waiting } from "./shell/states.tsx";
import { SittingPage } from "./sitting/sitting-page.tsx";
import { TodayPage } from "./today/today-page.tsx";

// Today and the sitting come at once and keep working if the server goes; the rest is fetched when wanted.
const WorkshopPage = lazy(async () => ({ default: (await import("./workshop/workshop-page.tsx")).WorkshopPage }));
const ImportPage = lazy(async () => ({ default: (await import("./import/import-page.tsx")).ImportPage }));
const TablePage = lazy(async () => ({ default: (await import("./workshop/table/table-page.tsx")).TablePage }));
const SplitPage = lazy(async () => ({ default: (await import("./workshop/split/split-page.tsx")).SplitPage }));
const BoxPage = lazy(async () => ({ default: (await import("./box/box-page.tsx")).BoxPage }));
const CardPage = lazy(async () => ({ default: (await import("./box/card-page.tsx")).CardPage }));
const PaperPage = lazy(async () => ({ default: (await import("./paper/paper-page.tsx")).PaperPage }));
const SheetPage = lazy(async () => ({ default: (await import("./paper/photo/sheet-page.tsx")).SheetPage }));
const KitPage = lazy(async () => ({ default: (await import("./kit/kit-page.tsx")).KitPage }));
const PlanPage = lazy(async () => ({ default: (await import("./plan/plan-page.tsx")).PlanPage }));

/** The whole program in the browser. */
export function App() {
  return (
    <ErrorBoundary>
      <QueryClientProvider client={queryClient}>
        <Router hook={useGuardedLocation}>
          <Confirming>
            <Notices>
              <Refusals />
              <Switch>
                <Route path="/sitting">
                  <SittingPage />
                </Route>
                <Route>
                  <Shell>
                    <Suspense fallback={<Waiting what="the page" />}>
                      <Pages />
                    </Suspense>
                  </Shell>
                </Route>
              </Switch>
            </Notices>
          </Confirming>
        </Router>
      </QueryClientProvider>
    </ErrorBoundary>
  );
}

/** A part of the address as it was before it was put into it. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

function Pages() {
  return (
    <Switch>
      <Route path="/">
        <TodayPage />
      </Route>
      <Route path="/workshop">
        <WorkshopPage />
      </Route>
      <Route path="/workshop/import">
        <ImportPage />
      </Route>
      <Route path="/workshop/table">
        <TablePage />
      </Route>
      <Route path="/workshop/split">
        <SplitPage />
      </Route>
      <Route path="/box">
        <BoxPage />
      </Route>
      <Route path="/box/card/:id">{({ id }) => <CardPage key={id} id={decoded(id)} />}</Route>
      <Route path="/paper">
        <PaperPage />
      </Route>
      <Route path="/paper/photo">
        <SheetPage />
      </Route>
      <Route path="/kit">
        <KitPage />
      </Route>
      <Route path="/plan">
        <PlanPage />
      </Route>
      <Route>
        <PageHeading title="Not found">There is nothing here</PageHeading>
        <p className="lead">
          This address leads nowhere. <Link href="/">Back to Today</Link>
        </p>
      </Route>
    </Switch>
  );
}
