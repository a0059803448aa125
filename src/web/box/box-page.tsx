// What is where? The drawer from above, and the cards of whatever part of it is opened.
import { Link } from "wouter";
import type { DrawerView } from "../../app/views.ts";
import { useDrawer, useToday } from "../data/queries.ts";
import { PageHeading } from "../shell/page-heading.tsx";
import { Loaded } from "../shell/states.tsx";
import { counted } from "../words.ts";
import { Drawer } from "./drawer.tsx";
import { partTitle, useOpenPart } from "./drawer-part.ts";
import { PartCards } from "./part-cards.tsx";
import "../styles/box.css";

/** The Box page. */
export function BoxPage() {
  const today = useToday();
  return (
    <>
      <PageHeading title="Box">Box</PageHeading>
      <Loaded query={today} what="the box">
        {(view) => (view.box ? <OpenBox /> : <NoBox />)}
      </Loaded>
    </>
  );
}

function OpenBox() {
  const drawer = useDrawer();
  return (
    <Loaded query={drawer} what="the drawer">
      {(view) => <DrawerAndCards view={view} />}
    </Loaded>
  );
}

function DrawerAndCards({ view }: { readonly view: DrawerView }) {
  const [part, open] = useOpenPart();
  return (
    <>
      <p className="lead">{inside(view)}</p>
      <figure className="drawer-figure">
        <Drawer view={view} open={part} onOpen={open} />
        <figcaption className="hint">The number on top: days from visit to visit.</figcaption>
      </figure>
      {part ? (
        <PartCards key={partTitle(part, view)} part={part} view={view} />
      ) : (
        <p className="hint">Open a part of the drawer to see its cards.</p>
      )}
    </>
  );
}

function inside(view: DrawerView): string {
  const travelling = view.compartments.flatMap(({ bundles }) => bundles).reduce((sum, { count }) => sum + count, 0);
  const withdrawn = view.withdrawn > 0 ? `, ${counted(view.withdrawn, "card")} withdrawn` : "";
  return `${counted(travelling, "card")} on the way, ${counted(view.kept, "card")} kept, ${counted(view.stock, "card")} waiting in the stock${withdrawn}.`;
}

function NoBox() {
  return (
    <p className="lead">
      There is no box yet. It is set up on the <Link href="/">Today page</Link> once you have written a fact.
    </p>
  );
}
