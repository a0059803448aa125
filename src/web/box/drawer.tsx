// The box from above, as one long drawer: the stock in front, the compartments with their tabs, the kept
// shelf behind. Every part is as long as its cards are many.
import type { CSSProperties } from "react";
import type { DrawerView } from "../../app/views.ts";
import { rampProps, vars } from "../vars.ts";
import { count, counted, shortDate } from "../words.ts";
import { type Part, partKey, partTitle } from "./drawer-part.ts";

interface DrawerProps {
  readonly view: DrawerView;
  readonly open: Part | null;
  readonly onOpen: (part: Part) => void;
}

/** The drawer, each part of it a button. */
export function Drawer({ view, open, onOpen }: DrawerProps) {
  const shared = { view, open, onOpen };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
    <section className="drawer-scroll" tabIndex={0} aria-label="The drawer from above">
      <div className="drawer">
        <div className="drawer-front" aria-hidden="true" />
        <DrawerPart {...shared} part={{ kind: "stock" }} holds={view.stock} label="Stock" />
        {view.compartments.map(({ compartment, period, bundles }) => (
          <fieldset
            key={compartment}
            className="compartment"
            style={grow(
              bundles.reduce((sum, one) => sum + one.count, 0),
              bundles.length,
            )}
          >
            <legend>
              <span className="visually-hidden">Compartment {compartment}, waits up to </span>
              {count(period)}
              <span className="visually-hidden">{period === 1 ? " day" : " days"}</span>
            </legend>
            <div className="bundles">
              {bundles.map((bundle) => (
                <DrawerPart
                  key={bundle.bundle}
                  {...shared}
                  part={{ kind: "compartment", compartment, bundle: bundle.bundle }}
                  holds={bundle.count}
                  due={bundle.due}
                  label={bundles.length > 1 ? `${compartment}·${bundle.bundle}` : `${compartment}`}
                  visit={bundle.nextVisit}
                />
              ))}
            </div>
          </fieldset>
        ))}
        <DrawerPart {...shared} part={{ kind: "kept" }} holds={view.kept} label="Kept" />
        {view.withdrawn > 0 ? (
          <DrawerPart {...shared} part={{ kind: "withdrawn" }} holds={view.withdrawn} label="Withdrawn" />
        ) : null}
        <div className="drawer-back" aria-hidden="true" />
      </div>
    </section>
  );
}

interface PartProps extends DrawerProps {
  readonly part: Part;
  readonly holds: number;
  readonly label: string;
  readonly due?: number;
  readonly visit?: string;
}

function DrawerPart({ view, open, onOpen, part, holds, label, due = 0, visit }: PartProps) {
  const isOpen = open !== null && partKey(open) === partKey(part);
  const ramp = part.kind === "compartment" ? rampProps(part.compartment, view.compartments.length) : null;
  const name = [
    partTitle(part, view),
    counted(holds, "card"),
    due > 0 ? `${count(due)} due` : "",
    visit ? `next visit ${shortDate(visit)}` : "",
  ];
  return (
    <button
      type="button"
      className="part"
      data-kind={part.kind}
      data-empty={holds === 0 ? "" : undefined}
      data-deep={ramp?.["data-deep"]}
      style={{ ...grow(holds, 1), ...ramp?.style }}
      aria-pressed={isOpen}
      aria-label={name.filter((text) => text !== "").join(", ")}
      onClick={() => onOpen(part)}
    >
      <span className="part-tab">{label}</span>
      <span className="part-cards" />
      <span className="part-foot">
        <span className="part-count">{count(holds)}</span>
        {due > 0 ? <span className="part-due">{count(due)} due</span> : null}
      </span>
    </button>
  );
}

/** A part's share of the drawer's length; the square root keeps a full stock from crowding out the rest. */
const grow = (cards: number, parts: number): CSSProperties =>
  vars({ "--grow": Math.sqrt(cards) * Math.sqrt(parts) + 0.5, "--parts": parts });
